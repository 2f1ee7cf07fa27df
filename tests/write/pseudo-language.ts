import { join } from 'node:path';
import { proveStrict } from '../../src/analyse/prove-strict.js';
import { translatedTexts } from '../../src/check/check-translation.js';
import { loadTemplates } from '../../src/cli/load-manual.js';
import { home, type Loaded, loadClinic, loadPacks } from '../../src/cli/load-rulebook.js';
import { tailorRules } from '../../src/decide/tailor-rules.js';
import { linkRules } from '../../src/link/link-rules.js';
import type { Rulebook } from '../../src/link/rulebook.js';
import { tokenPattern } from '../../src/link/template-texts.js';
import type { Located } from '../../src/read/read-documents.js';
import type { ClinicDocument, TranslationDocument, Words } from '../../src/read/types.gen.js';
import { groupBy } from '../../src/write/text/group-by.js';

/** A text with every run of words between brackets, and all that is no word as it is. */
export function pseudo(words: Words): Words {
  if (typeof words === 'string') return bracket(words);
  return {
    ...Object.fromEntries(Object.entries(words).map(([form, text]) => [form, bracket(text)])),
    other: bracket(words.other),
  };
}

function bracket(text: string): string {
  const runs = new RegExp(String.raw`(${tokenPattern})|\p{L}(?:[\p{L}\p{N} ,;’'/-]*[\p{L}\p{N}])?`, 'gu');
  return text.replace(runs, (found, token: string | undefined) => (token === undefined ? `⟦${found}⟧` : found));
}

/** The rulebook of a sample clinic in which every text of packs, templates and phrases is between brackets. */
export function pseudoRulebook(seed: string): Rulebook {
  const loaded = loadClinic(loadPacks(join(home, 'rules'), home, 'rules'), join(home, 'seeds', seed), home);
  const texts = translatedTexts(loaded.packs, loadTemplates(), []);
  const place = { file: 'pseudo.yaml', line: 1, column: 1 };
  const documents = [...groupBy(texts, ({ of }) => of)].map(
    ([of, own]): Located<TranslationDocument> => ({
      file: place.file,
      data: { kind: 'translation', language: 'fr-CA', of, texts: own.map(({ words }) => ({ of: words, say: pseudo(words) })) },
      at: () => place,
      atKey: () => place,
      atWords: () => place,
    }),
  );
  const translations = { languages: ['fr-CA'], documents };
  const { rules, findings } = linkRules(loaded.packs, withoutLetters(loaded), '2026-12-01', proveStrict, translations);
  if (rules === undefined) throw new Error(JSON.stringify(findings, undefined, 2));
  return withoutIds(tailorRules(rules));
}

/** What the clinic says itself, with a bullet for each letter; ids, quantities and days stay as they are. */
function withoutLetters({ clinicDocuments }: Loaded): Located[] {
  return clinicDocuments.map((document) => {
    const data = bulleted(document.data);
    return data.kind === 'clinic' ? { ...document, data: inFrench(data) } : { ...document, data };
  });
}

function inFrench(data: ClinicDocument): ClinicDocument {
  return { ...data, document: { ...data.document, language: 'fr-CA' } };
}

/** Without the letters of titles, headings and clauses of sources, and of the names of rules. */
function withoutIds(rulebook: Rulebook): Rulebook {
  const sources = [...rulebook.sources].map(
    ([id, source]) => [id, { ...bulleted(source, 'all'), id, type: source.type }] as const,
  );
  const decisions = [...rulebook.decisions].map(([id, decision]) => {
    const rules = decision.rules.map((rule) => ({ ...rule, name: bullets(rule.name) }));
    const retired = decision.retired.map(({ rule, by }) => ({ rule: { ...rule, name: bullets(rule.name) }, by }));
    return [id, { ...decision, rules, retired }] as const;
  });
  const requirements = [...rulebook.requirements].map(
    ([id, { item, section, ...asked }]) => [id, { ...asked, item: bullets(item), section: bullets(section) }] as const,
  );
  const changed = { sources: new Map(sources), decisions: new Map(decisions), requirements: new Map(requirements) };
  return withoutClauses({ ...rulebook, ...changed });
}

function withoutClauses<T>(value: T): T {
  if (Array.isArray(value)) return value.map((each: unknown) => withoutClauses(each)) as T;
  if (value instanceof Map) return new Map([...value].map(([key, each]) => [key, withoutClauses(each)])) as T;
  if (typeof value !== 'object' || value === null) return value;
  const isCitation = 'id' in value && 'at' in value && typeof value.at === 'string';
  const entries = Object.entries(value).map(([key, each]) => [
    key,
    isCitation && key === 'at' ? bullets(String(each)) : withoutClauses(each),
  ]);
  return Object.fromEntries(entries) as T;
}

const kept =
  /^(?:[a-z0-9]+(?:[./-][a-z0-9]+)*|(?:[AF]0 |pH )?-?[\d.]+ ?\S{0,9}(?: CaCO3)?(?: or .*)?|[\^~>].*|[A-Z]{2}(?:-[A-Z]+)?)$/;

function bulleted<T>(value: T, which: 'all' | 'words' = 'words'): T {
  if (typeof value === 'string') return (which === 'words' && kept.test(value) ? value : bullets(value)) as T;
  if (Array.isArray(value)) return value.map((each: unknown) => bulleted(each, which)) as T;
  if (typeof value !== 'object' || value === null) return value;
  return Object.fromEntries(Object.entries(value).map(([key, each]) => [key, bulleted(each, which)])) as T;
}

function bullets(text: string): string {
  return text
    .split(/(\[\]\([^)]*\))/)
    .map((piece, index) => (index % 2 === 1 ? piece : piece.replace(/\p{L}/gu, '•')))
    .join('');
}
