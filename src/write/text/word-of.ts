import type { ManualMeta } from '../model/model-title.js';

/**
 * A word that a printer says of itself: the phrase of that id, its places unfilled.
 *
 * @throws RangeError when there is none.
 */
export function wordOf({ words }: Pick<ManualMeta, 'words'>, id: string): string {
  const found = words[id];
  if (found === undefined) throw new RangeError(`no phrase \`${id}\``);
  return found;
}

/** As `wordOf`, with its places `{name}` filled. */
export function filledWord(meta: Pick<ManualMeta, 'words'>, id: string, values: Readonly<Record<string, string>>): string {
  return wordOf(meta, id).replace(/\{([a-z-]+)\}/g, (place, name: string) => values[name] ?? place);
}
