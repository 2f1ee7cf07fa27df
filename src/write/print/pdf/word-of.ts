import type { ManualMeta } from '../../model/model-title.js';

type Worded = Pick<ManualMeta, 'words'>;

/** A phrase that printers need, in the language of the writing, its places unfilled: `contents` for `print.contents`. */
export function wordOf({ words }: Worded, id: string): string {
  const found = words[`print.${id}`];
  if (found === undefined) throw new RangeError(`no phrase \`print.${id}\``);
  return found;
}

/** A phrase with its places filled. */
export function filledWord(meta: Worded, id: string, values: Readonly<Record<string, string>>): string {
  return wordOf(meta, id).replace(/\{([a-z-]+)\}/g, (place, name: string) => values[name] ?? place);
}

/** What stands around the places of a phrase: `page `, ` of ` and an empty text of `page {page} of {pages}`. */
export function aroundPlaces(phrase: string): string[] {
  return phrase.split(/\{[a-z-]+\}/);
}
