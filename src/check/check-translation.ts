import type { Pack } from '../link/choose-packs.js';
import { dictionaryOf, keyOf, saidTexts } from '../link/dictionary.js';
import { ownerOfTemplate, templateTexts } from '../link/template-texts.js';
import { textsOf } from '../link/texts.js';
import { ownerOf } from '../link/translate.js';
import type { Finding } from '../read/finding.js';
import type { Located } from '../read/read-documents.js';
import type { TranslationDocument, Words } from '../read/types.gen.js';

/** A text as it is written, and whose it is: `base/cleaning`, `templates/manual`. */
export interface WrittenText {
  of: string;
  words: Words;
  /** In the other language; absent where nobody has translated it. */
  say?: Words;
}

/** Every text of packs and templates once for each folder that it stands in, with what it says in another language. */
export function translatedTexts(
  packs: readonly Pack[],
  templates: ReadonlyMap<string, string>,
  translations: readonly Located<TranslationDocument>[],
): WrittenText[] {
  const dictionary = dictionaryOf(saidTexts(translations));
  const written: WrittenText[] = [
    ...packs.flatMap((pack) =>
      pack.documents.flatMap((document) => textsOf(document.data).map(({ words }) => ({ of: ownerOf(pack, document), words }))),
    ),
    ...[...templates].flatMap(([name, text]) =>
      templateTexts(text).map(({ text: words }) => ({ of: ownerOfTemplate(name), words })),
    ),
  ];
  const once = new Map(written.map((each) => [JSON.stringify([each.of, keyOf(each.words)]), each]));
  return [...once.values()].map(({ of, words }) => {
    const say = dictionary(of, words);
    return { of, words, ...(say !== undefined && { say }) };
  });
}

/** Reports entries of translations whose text stands nowhere any more: it was changed, moved away or taken out. */
export function checkStale(
  packs: readonly Pack[],
  templates: ReadonlyMap<string, string>,
  translations: readonly Located<TranslationDocument>[],
): Finding[] {
  const keys = new Set(translatedTexts(packs, templates, []).map(({ words }) => keyOf(words)));
  return translations.flatMap(({ data, at }) =>
    data.texts.flatMap(({ of }, index): Finding[] =>
      // What has no letters is no text, and does no harm.
      keys.has(keyOf(of)) || !/\p{L}/u.test(keyOf(of))
        ? []
        : [
            {
              code: 'W513',
              message: 'a translation of a text that is not there',
              place: at(['texts', index, 'of']),
              help: 'translate what the text says now, or take the entry out',
            },
          ],
    ),
  );
}
