import { didYouMean } from '../read/nearest.js';
import { quoted, quotedList } from '../read/quoted.js';
import type { Located } from '../read/read-documents.js';
import type { ClinicDocument, TranslationDocument, Words } from '../read/types.gen.js';
import type { Pack } from './choose-packs.js';
import { type Dictionary, dictionaryOf, keyOf, type SaidTexts, saidTexts, untranslatedMark } from './dictionary.js';
import { type Layer, type Linking, report } from './linking.js';
import { lostTokens } from './lost-tokens.js';
import { spellLayers, spellRoles } from './spell.js';
import { mapTexts } from './texts.js';

/** The languages that there are translations into, and the translations into the one that is used. */
export interface Translations {
  languages: readonly string[];
  documents: readonly Located<TranslationDocument>[];
}

export const noTranslations: Translations = { languages: [], documents: [] };

/** The layers in the words in which they are printed. */
export interface WordedLayers {
  layers: Layer[];
  language: string;
  /** Where texts are translated: what lines of templates say. */
  translation?: { templates: SaidTexts };
}

/**
 * Writes the texts of all packs in the language that the clinic asks for, or, where that is the language of its region,
 * as its region spells them. A text that nobody has translated stays in English behind a mark. The clinic's own texts stay
 * as they are. Reports an unknown language, and translations that lose what a text refers to.
 */
export function wordLayers(
  linking: Pick<Linking, 'findings'>,
  packs: readonly Pack[],
  clinic: Layer,
  clinicDocument: Located<ClinicDocument>,
  translations: Translations,
): WordedLayers {
  const own = packs.findLast(({ head }) => head.data.print?.language !== undefined)?.head.data.print?.language ?? 'en';
  const language = clinicDocument.data.document.language ?? own;
  const spelt = spellLayers<Layer>([...packs, clinic]);
  if (language === own) return { layers: spelt, language };
  if (!translations.languages.includes(language)) {
    const known = [own, ...translations.languages];
    const help = didYouMean(language, known) ?? `there are ${quotedList(known)}`;
    report(linking, 'E326', clinicDocument.at(['document', 'language']), `unknown language ${quoted(language)}`, help);
    return { layers: spelt, language: own };
  }
  for (const document of translations.documents) checkEntries(linking, document);
  const said = saidTexts(translations.documents);
  const dictionary = dictionaryOf(said);
  const translated = spelt.map((layer, index) => {
    const pack = packs[index];
    return pack === undefined ? layer : translateLayer(pack, layer, dictionary);
  });
  const templates = Object.fromEntries(Object.entries(said).filter(([of]) => of.split('/')[0] === 'templates'));
  return { layers: spellRoles(translated), language, translation: { templates } };
}

/** Whose texts a document holds: its pack, and the folder in it, such as `base/cleaning`; what lies elsewhere, the pack's. */
export function ownerOf({ id, head }: Pack, { file }: Pick<Located, 'file'>): string {
  const root = slashed(head.file).replace(/[^/]*$/, '');
  if (!slashed(file).startsWith(root)) return id;
  const [folder, ...rest] = slashed(file).slice(root.length).split('/');
  return rest.length === 0 ? id : `${id}/${folder}`;
}

function slashed(path: string): string {
  return path.replaceAll('\\', '/');
}

/** The texts of a pack translated; `spelt` holds the same documents as they are printed in English. */
function translateLayer(pack: Pack, spelt: Layer, dictionary: Dictionary): Layer {
  const documents = pack.documents.map((document, index) => {
    const inEnglish = spelt.documents[index]?.data ?? document.data;
    const of = ownerOf(pack, document);
    const data = mapTexts(document.data, (words, path) => dictionary(of, words) ?? marked(wordsAt(inEnglish, path) ?? words));
    return { ...document, data };
  });
  return { ...spelt, documents };
}

function marked(words: Words): Words {
  if (typeof words === 'string') return `${untranslatedMark}${words}`;
  const { other, ...forms } = words;
  return {
    ...Object.fromEntries(Object.entries(forms).map(([form, text]) => [form, `${untranslatedMark}${text}`])),
    other: `${untranslatedMark}${other}`,
  };
}

function wordsAt(value: unknown, path: readonly (string | number)[]): Words | undefined {
  const found = path.reduce<unknown>(
    (inner, key) =>
      typeof inner === 'object' && inner !== null ? (inner as Readonly<Record<string | number, unknown>>)[key] : undefined,
    value,
  );
  return found as Words | undefined;
}

function checkEntries(linking: Pick<Linking, 'findings'>, document: Located<TranslationDocument>): void {
  const seen = new Set<string>();
  document.data.texts.forEach(({ of, say }, index) => {
    const at = (key: string) => document.at(['texts', index, key]);
    const key = keyOf(of);
    if (seen.has(key)) report(linking, 'E307', at('of'), 'the same text is translated twice', 'keep one of the two');
    seen.add(key);
    const lost = lostTokens(of, say);
    if (lost !== undefined) report(linking, 'E327', at('say'), lost.message, lost.help);
  });
}
