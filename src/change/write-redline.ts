import type { Heading, Paragraph, PhrasingContent, Root, RootContent } from 'mdast';
import { modelMeta } from '../write/model/model-title.js';
import { fillTemplate } from '../write/text/fill-template.js';
import { phrase } from '../write/text/phrase.js';
import { spellTemplates } from '../write/text/spell-templates.js';
import { buildTree } from '../write/tree/build-tree.js';
import { anchorOf, type Section } from '../write/tree/nodes.js';
import type { Writing } from '../write/writing.js';
import type { BlockChange, SectionChange } from './compare-texts.js';
import { redlineWords } from './redline-words.js';
import type { ChangeInput } from './write-notice.js';

/**
 * Writes the redline of a manual: each section whose text changed, whole, with what was put in and taken out. Sections that are the
 * same word for word, or only moved or renumbered, are not shown, nor is the annex that says where all of them stand.
 */
export function writeRedline({ comparison, templates, tool }: ChangeInput): Writing {
  const { after, before, sections: all } = comparison;
  const shown = all.filter(
    ({ id, fate }) => !id.startsWith('section:trace') && (fate === 'changed' || fate === 'new' || fate === 'gone'),
  );
  const head = fillTemplate(spellTemplates(templates, after), 'notice/redline', {
    clinic: after.clinic.name,
    title: phrase(after, 'notice.redline-title'),
    number: after.clinic.document.number,
    version: after.clinic.document.version,
    before: before.clinic.document.version,
    some: shown.length > 0,
    same: all.length - shown.length,
  });
  const { tree } = buildTree(head, after, new Map(), { numbered: false });
  const redlined = shown.map(redlineSection);
  const root: Root = { type: 'root', children: [...tree.children, ...redlined.flatMap(({ nodes }) => nodes)] };
  return {
    kind: 'redline',
    tree: root,
    sections: redlined.map(({ section }) => section),
    meta: { ...modelMeta(after, tool), title: phrase(after, 'notice.redline-title') },
  };
}

function redlineSection({ id, fate, before, after, blocks }: SectionChange): { section: Section; nodes: RootContent[] } {
  const { number = '', title = '' } = after ?? before ?? {};
  const [kind = '', ...rest] = id.split(':');
  const mark = { kind, id: rest.join(':'), home: true };
  const section: Section = { id, number, title, depth: 1, anchor: anchorOf(mark) };
  const heading: Heading = {
    type: 'heading',
    depth: 1,
    children: titleOf(fate, before?.title, title),
    data: { number, marks: [mark], ...(fate === 'new' && { change: 'inserted' }), ...(fate === 'gone' && { change: 'deleted' }) },
  };
  const nodes = [
    heading,
    ...withContext(blocks).flatMap((block) => (block === undefined ? [paragraph([text('[…]')])] : redlineBlock(block))),
  ];
  return { section, nodes: nodes.length > 1 ? nodes : [...nodes, paragraph([text('–')])] };
}

/** What changed, with the block before and the block after it; what lies between is left out, as an absent block. */
function withContext(blocks: readonly BlockChange[]): (BlockChange | undefined)[] {
  const isKept = ({ fate }: BlockChange) => fate === 'same' || fate === 'renumbered' || fate === 'moved-away';
  const near = blocks.map((_, index) => blocks.slice(Math.max(0, index - 1), index + 2).some((each) => !isKept(each)));
  return blocks.flatMap((block, index) => (near[index] ? [block] : index === 0 || near[index - 1] ? [undefined] : []));
}

function titleOf(fate: SectionChange['fate'], before: string | undefined, after: string): PhrasingContent[] {
  if (fate === 'gone') return [deleted(after)];
  if (fate === 'new') return [inserted(after)];
  return before === undefined || before === after ? [text(after)] : piecesOf(before, after);
}

/** A block is a paragraph a line. What moved away is not shown where it was. */
function redlineBlock({ fate, before = '', after = '' }: BlockChange): Paragraph[] {
  const lines = (words: string, of: (line: string) => PhrasingContent, change: 'inserted' | 'deleted' | 'moved') =>
    words.split('\n').map((line) => paragraph([of(line)], change));
  switch (fate) {
    case 'inserted':
      return lines(after, inserted, 'inserted');
    case 'deleted':
      return lines(before, deleted, 'deleted');
    case 'moved':
      return lines(after, text, 'moved');
    case 'moved-away':
      return [];
    case 'reworded':
      return inLines(piecesOf(before, after)).map((words) => paragraph(words));
    case 'same':
    case 'renumbered':
      return after.split('\n').map((line) => paragraph([text(line)]));
  }
}

function piecesOf(before: string, after: string): PhrasingContent[] {
  return redlineWords(before, after).map(({ what, text: words }) =>
    what === 'kept' ? text(words) : what === 'inserted' ? inserted(words) : deleted(words),
  );
}

/** Parts pieces at the ends of lines, so that each line is a paragraph of its own. */
function inLines(pieces: readonly PhrasingContent[]): PhrasingContent[][] {
  const lines: PhrasingContent[][] = [[]];
  for (const piece of pieces) {
    const [of, words] =
      piece.type === 'inserted' || piece.type === 'deleted'
        ? [piece.type === 'inserted' ? inserted : deleted, wordsOf(piece.children)]
        : [text, wordsOf([piece])];
    words.split('\n').forEach((line, index) => {
      if (index > 0) lines.push([]);
      if (line !== '') lines.at(-1)?.push(of(line));
    });
  }
  return lines.filter((line) => line.length > 0);
}

function wordsOf(nodes: readonly PhrasingContent[]): string {
  return nodes.map((node) => (node.type === 'text' ? node.value : '')).join('');
}

function paragraph(children: PhrasingContent[], change?: 'inserted' | 'deleted' | 'moved'): Paragraph {
  return { type: 'paragraph', children, ...(change && { data: { change } }) };
}

function text(value: string): PhrasingContent {
  return { type: 'text', value };
}

function inserted(value: string): PhrasingContent {
  return { type: 'inserted', children: [{ type: 'text', value }] };
}

function deleted(value: string): PhrasingContent {
  return { type: 'deleted', children: [{ type: 'text', value }] };
}
