import type { ManualMeta } from '../../model/model-title.js';

/**
 * Words that the page prints of itself, in the language of the clinic: the phrase `print.<id>`, its places unfilled.
 *
 * @throws RangeError when there is none of that name.
 */
export function wordOf({ words }: Pick<ManualMeta, 'words'>, id: string): string {
  const found = words[`print.${id}`];
  if (found === undefined) throw new RangeError(`no phrase \`print.${id}\``);
  return found;
}

/** As `wordOf`, with each place `{name}` filled. */
export function filledWord(meta: Pick<ManualMeta, 'words'>, id: string, values: Readonly<Record<string, string>>): string {
  return wordOf(meta, id).replace(/\{([a-z-]+)\}/g, (place, name: string) => values[name] ?? place);
}
