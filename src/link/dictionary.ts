import type { Located } from '../read/read-documents.js';
import type { TranslationDocument, Words } from '../read/types.gen.js';

/** The language in which packs and templates are written. */
export const sourceLanguage = 'en';

/** Stands before a text that is printed in the language of the packs, since nobody has translated it. */
export const untranslatedMark = `[${sourceLanguage}] `;

/** What texts say in another language: by whose they are (`base/cleaning`, `templates/manual`), then by the text. */
export type SaidTexts = Readonly<Record<string, Readonly<Record<string, Words>>>>;

/** Finds what a text of a pack's folder says in another language. */
export type Dictionary = (of: string, words: Words) => Words | undefined;

/**
 * A text is looked up first among those of its own folder, then of its pack, then anywhere: what was moved to another
 * file stays translated.
 */
export function dictionaryOf(said: SaidTexts): Dictionary {
  const anywhere = new Map(
    Object.values(said)
      .reverse()
      .flatMap((texts) => Object.entries(texts)),
  );
  const inPack = new Map<string, Map<string, Words>>();
  for (const [of, texts] of Object.entries(said)) {
    const pack = inPack.get(packOf(of)) ?? new Map<string, Words>();
    for (const [key, words] of Object.entries(texts)) if (of === packOf(of) || !pack.has(key)) pack.set(key, words);
    inPack.set(packOf(of), pack);
  }
  return (of, words) => {
    const key = keyOf(words);
    const own = Object.hasOwn(said, of) ? said[of] : undefined;
    if (own !== undefined && Object.hasOwn(own, key)) return own[key];
    return inPack.get(packOf(of))?.get(key) ?? anywhere.get(key);
  };
}

/** The texts of translation documents; of two entries for one text in one folder the first counts. */
export function saidTexts(documents: readonly Located<TranslationDocument>[]): SaidTexts {
  const said = new Map<string, Map<string, Words>>();
  for (const { data } of documents) {
    const texts = said.get(data.of) ?? new Map<string, Words>();
    for (const { of, say } of data.texts) if (!texts.has(keyOf(of))) texts.set(keyOf(of), say);
    said.set(data.of, texts);
  }
  return Object.fromEntries([...said].map(([of, texts]) => [of, Object.fromEntries(texts)]));
}

/** A text as the key under which it is looked up; the forms of a counted word together. */
export function keyOf(words: Words): string {
  return typeof words === 'string' ? words : JSON.stringify(Object.entries(words).sort(([a], [b]) => (a < b ? -1 : 1)));
}

function packOf(of: string): string {
  return of.split('/')[0] ?? of;
}
