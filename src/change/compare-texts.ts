import { diffArrays } from 'diff';
import type { TextBlock } from '../write/tree/section-texts.js';
import type { FrozenText } from './frozen-text.js';

/**
 * What became of a block: `same`, word for word; `renumbered`, only numbers of sections or sources differ; `reworded`, other words under the
 * same id; `moved`, the same words elsewhere (`movedTo` where it was, `moved` where it is); `inserted` and `deleted`.
 */
export type BlockFate = 'same' | 'renumbered' | 'reworded' | 'moved' | 'moved-away' | 'inserted' | 'deleted';

export interface BlockChange {
  key: string;
  fate: BlockFate;
  before?: string;
  after?: string;
  /** Of a moved block: the section where it was, or is now. */
  section?: string;
}

/**
 * What became of a section. `renumbered`: no word differs but numbers of sections and sources. `moved`: its words are the same, in another
 * order or from elsewhere.
 */
export type SectionFate = 'same' | 'renumbered' | 'moved' | 'changed' | 'new' | 'gone';

export interface SectionChange {
  id: string;
  fate: SectionFate;
  before?: { number: string; title: string };
  after?: { number: string; title: string };
  /** In the order of the new manual; what was deleted stands where it stood. */
  blocks: BlockChange[];
}

/** Compares the texts of two manuals by the ids of sections and blocks, so that what moved is not deleted and inserted. */
export function compareTexts(before: FrozenText, after: FrozenText): SectionChange[] {
  const old = new Map(before.sections.map((section) => [section.id, section]));
  const next = new Map(after.sections.map((section) => [section.id, section]));
  const moves = findMoves(before, after);
  const order = alignKeys(
    before.sections.map(({ id }) => id),
    after.sections.map(({ id }) => id),
  );
  return order.map(({ key: id }): SectionChange => {
    const [was, is] = [old.get(id), next.get(id)];
    const blocks = compareBlocks(id, was?.blocks ?? [], is?.blocks ?? [], moves);
    return {
      id,
      fate: was === undefined ? 'new' : is === undefined ? 'gone' : fateOf(blocks, was, is),
      ...(was && { before: { number: was.number, title: was.title } }),
      ...(is && { after: { number: is.number, title: is.title } }),
      blocks,
    };
  });
}

function fateOf(blocks: readonly BlockChange[], was: { number: string; title: string }, is: typeof was): SectionFate {
  const fates = new Set(blocks.map(({ fate }) => fate));
  const words: BlockFate[] = ['reworded', 'inserted', 'deleted'];
  if (was.title !== is.title || words.some((fate) => fates.has(fate))) return 'changed';
  if (fates.has('moved') || fates.has('moved-away')) return 'moved';
  return fates.has('renumbered') || was.number !== is.number ? 'renumbered' : 'same';
}

/** Where blocks with an id of their own went: from section to section, by key, where no word changed. */
interface Moves {
  /** The section where it is now, by the key of a block. */
  to: ReadonlyMap<string, string>;
  /** The section where it was. */
  from: ReadonlyMap<string, string>;
}

function findMoves(before: FrozenText, after: FrozenText): Moves {
  const places = ({ sections }: FrozenText) => {
    const found = new Map<string, { section: string; text: string }[]>();
    for (const { id, blocks } of sections)
      for (const { key, unnumbered } of blocks)
        if (key.includes(':')) found.set(key, [...(found.get(key) ?? []), { section: id, text: unnumbered }]);
    return found;
  };
  const [old, next] = [places(before), places(after)];
  const [to, from] = [new Map<string, string>(), new Map<string, string>()];
  for (const [key, [was, ...others]] of old) {
    const [is, ...more] = next.get(key) ?? [];
    if (was === undefined || is === undefined || others.length > 0 || more.length > 0) continue;
    if (was.section === is.section || was.text !== is.text) continue;
    to.set(key, is.section);
    from.set(key, was.section);
  }
  return { to, from };
}

function compareBlocks(section: string, was: readonly TextBlock[], is: readonly TextBlock[], moves: Moves): BlockChange[] {
  const [old, next] = [byKey(matchUnmarked(was, is)), byKey(is)];
  const order = alignKeys([...old.keys()], [...next.keys()]);
  return order.map(({ key, moved }): BlockChange => {
    const [before, after] = [old.get(key), next.get(key)];
    if (before === undefined) {
      const from = moves.from.get(key);
      return from === undefined || moves.to.get(key) !== section
        ? { key, fate: 'inserted', after: after?.text ?? '' }
        : { key, fate: 'moved', after: after?.text ?? '', section: from };
    }
    if (after === undefined) {
      const to = moves.to.get(key);
      return to === undefined || moves.from.get(key) !== section
        ? { key, fate: 'deleted', before: before.text }
        : { key, fate: 'moved-away', before: before.text, section: to };
    }
    const texts = { before: before.text, after: after.text };
    if (before.unnumbered !== after.unnumbered) return { key, fate: 'reworded', ...texts };
    if (moved) return { key, fate: 'moved', ...texts };
    return { key, fate: before.text === after.text ? 'same' : 'renumbered', ...texts };
  });
}

/**
 * Blocks without an id of their own are keyed by their running number, so one more in front would shift all. They are
 * named after the new block with the same words instead, where there is one.
 */
function matchUnmarked(was: readonly TextBlock[], is: readonly TextBlock[]): TextBlock[] {
  const unmarked = (blocks: readonly TextBlock[]) => blocks.filter(({ key }) => !key.includes(':'));
  const [old, next] = [unmarked(was), unmarked(is)];
  const names = new Map<string, string>();
  const parts = diffArrays([...old], [...next], { comparator: (a, b) => a.unnumbered === b.unnumbered });
  let [i, j] = [0, 0];
  const gone: TextBlock[] = [];
  for (const { added, removed, value } of parts) {
    if (added) {
      j += value.length;
      continue;
    }
    for (const _ of value) {
      const block = old[i];
      i += 1;
      if (block === undefined) continue;
      if (removed) gone.push(block);
      else {
        const same = next[j];
        j += 1;
        if (same !== undefined) names.set(block.key, same.key);
      }
    }
  }
  const taken = new Set(names.values());
  const free = new Set(next.map(({ key }) => key).filter((key) => !taken.has(key)));
  for (const { key } of gone) {
    // Where its words changed it keeps its number if that is free, and else stands for itself.
    if (free.delete(key)) names.set(key, key);
    else names.set(key, `${key}-before`);
  }
  return was.map((block) => ({ ...block, key: names.get(block.key) ?? block.key }));
}

function byKey(blocks: readonly TextBlock[]): Map<string, TextBlock> {
  return new Map(blocks.map((block) => [block.key, block]));
}

/** Two orders as one: those of `after` in their order, those only in `before` after what they stood behind. `moved`: the order changed. */
function alignKeys(before: readonly string[], after: readonly string[]): { key: string; moved: boolean }[] {
  const [old, next] = [new Set(before), new Set(after)];
  const aligned: { key: string; moved: boolean }[] = [];
  for (const { added, removed, value } of diffArrays([...before], [...after]))
    for (const key of value) {
      if (removed && next.has(key)) continue;
      aligned.push({ key, moved: added === true && old.has(key) });
    }
  return aligned;
}
