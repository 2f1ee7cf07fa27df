import { stringify } from 'yaml';
import { translatedTexts, type WrittenText } from '../../check/check-translation.js';
import { didYouMean } from '../../read/nearest.js';
import { quotedList } from '../../read/quoted.js';
import type { Words } from '../../read/types.gen.js';
import { groupBy } from '../../write/text/group-by.js';
import { BadUse } from '../bad-use.js';
import { type CommonOptions, type Context, openPacks } from '../context.js';
import { loadTemplates } from '../load-manual.js';
import { printFindings } from '../print-findings.js';

export interface TextsOptions extends CommonOptions {
  language?: string;
  of?: string;
  missing?: boolean;
  json?: boolean;
}

/**
 * `rulebook list texts`: the texts of packs and templates with what they say in a language, as documents of kind `translation`
 * to fill in. A language that has no folder yet has no translations.
 */
export function runListTexts(context: Context, options: TextsOptions): number {
  const { language } = options;
  if (language === undefined || !/^[a-z]{2}(?:-[A-Z]{2})?$/.test(language))
    throw new BadUse(
      language === undefined ? 'a list of texts needs a language' : `\`${language}\` is no language`,
      'write `--language fr-CA`',
    );
  const rules = openPacks(context, options, 'rules');
  const { documents, findings } = rules.languages.includes(language)
    ? rules.translations(language)
    : { documents: [], findings: [] };
  if (rules.findings.length + findings.length > 0) {
    printFindings([...rules.findings, ...findings], context.err);
    return 1;
  }
  const all = translatedTexts(rules.packs, loadTemplates(), documents);
  const texts = ofOwner(all, options.of).filter(({ say }) => !options.missing || say === undefined);
  if (options.json) context.out(JSON.stringify(texts.map(entryWithOwner), undefined, 2));
  else {
    const documents = [...groupBy(texts, ({ of }) => of)].map(([of, own]) => asDocument(language, of, own));
    if (documents.length > 0) context.out(documents.join('---\n').trimEnd());
  }
  return 0;
}

function ofOwner(texts: readonly WrittenText[], wanted: string | undefined): WrittenText[] {
  if (wanted === undefined) return [...texts];
  const found = texts.filter(({ of }) => of === wanted || of.startsWith(`${wanted}/`));
  if (found.length > 0) return found;
  const owners = [...new Set(texts.map(({ of }) => of))];
  throw new BadUse(`nothing is called \`${wanted}\``, didYouMean(wanted, owners) ?? `there are ${quotedList(owners)}`);
}

function entryWithOwner({ of, words, say }: WrittenText): { in: string; of: Words; say: Words } {
  return { in: of, of: words, say: say ?? '' };
}

/** One document of kind `translation`; what is missing has an empty `say`. */
function asDocument(language: string, of: string, texts: readonly WrittenText[]): string {
  const entries = texts.map(({ words, say }) => ({ of: words, say: say ?? emptyOf(words) }));
  const data = { kind: 'translation', language, of, texts: entries };
  return stringify(data, { lineWidth: 0, version: '1.2' });
}

function emptyOf(words: Words): Words {
  if (typeof words === 'string') return '';
  const forms = Object.fromEntries(Object.keys(words).map((form) => [form, '']));
  return { ...forms, other: '' };
}
