import { existsSync, readdirSync, readFileSync, statSync } from 'node:fs';
import { basename, join, relative, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import { proveStrict } from '../analyse/prove-strict.js';
import { tailorRules } from '../decide/tailor-rules.js';
import type { Pack } from '../link/choose-packs.js';
import { linkRules } from '../link/link-rules.js';
import type { Rulebook } from '../link/rulebook.js';
import { type Finding, hasErrors } from '../read/finding.js';
import { createReader, type Located, type Reader } from '../read/read-documents.js';
import type { FixtureDocument, PackDocument, TranslationDocument } from '../read/types.gen.js';
import { documentCache } from './document-cache.js';
import { loadFolder } from './load-folder.js';

/** The folder of the tool itself: rules, templates and sample clinics lie in it. */
export const home = fileURLToPath(new URL('../../', import.meta.url));

/** The folders of the sample clinics that come with the tool. */
export function sampleClinics(): string[] {
  return foldersIn(join(home, 'seeds')).filter((folder) => existsSync(join(folder, 'clinic.yaml')));
}

/** The rules read from disk: the packs, and the published values that prove them. */
export interface LoadedPacks {
  packs: Pack[];
  fixtures: Located<FixtureDocument>[];
  findings: Finding[];
  /** The languages that the rules are translated into. */
  languages: string[];
  /** Reads the translations into one of them. */
  translations(language: string): { documents: Located<TranslationDocument>[]; findings: Finding[] };
  /** Reads documents against the schemas of these rules. */
  reader: Reader;
}

/** Everything read from disk for one clinic. */
export interface Loaded extends LoadedPacks {
  clinicDocuments: Located[];
}

/** Whether the published values are read too: answering a question does without them. */
export type Extent = 'rules' | 'rules and published values';

/** Reads one clinic folder and lays it beside the rules. Files are named relative to `base` in findings. */
export function loadClinic(rules: LoadedPacks, clinicFolder: string, base: string): Loaded {
  const clinic = readFolder(clinicFolder, base, rules.reader);
  const findings = [...rules.findings, ...clinic.findings];
  if (!clinic.documents.some(({ data }) => data.kind === 'clinic') && clinic.findings.length === 0)
    findings.push({
      code: 'E323',
      message: 'the folder holds no clinic',
      place: { file: relative(base, clinicFolder) || '.', line: 1, column: 1 },
      help: 'a clinic folder has a document of `kind: clinic`; `rulebook init` makes one',
    });
  return {
    ...rules,
    fixtures: [...rules.fixtures, ...clinic.documents.filter(isFixture)],
    clinicDocuments: clinic.documents,
    findings,
  };
}

/** Reads the rules. Files are named relative to `base` in findings. */
export function loadPacks(rulesFolder: string, base: string, extent: Extent = 'rules and published values'): LoadedPacks {
  const reader = readerFor(rulesFolder);
  const packFolders = [join(rulesFolder, 'base'), ...foldersIn(join(rulesFolder, 'regions'))];
  const loaded = packFolders.filter((folder) => existsSync(folder)).map((folder) => readFolder(folder, base, reader));
  const languagesFolder = join(rulesFolder, 'languages');
  const fixturesFolder = join(rulesFolder, 'fixtures');
  const wanted = extent !== 'rules' && existsSync(fixturesFolder);
  const fixtures = wanted ? readFolder(fixturesFolder, base, reader) : empty;
  const asked = foldersIn(join(rulesFolder, 'requirements')).map((folder) => ({
    pack: basename(folder),
    ...readFolder(folder, base, reader),
  }));
  const strays = [
    ...straysAmong('fixture', 'fixtures', fixtures.documents),
    ...asked.flatMap(({ documents }) => straysAmong('requirements', 'requirements', documents)),
  ];
  const packs = loaded.flatMap(({ documents }) => asPack(documents) ?? []);
  for (const { pack, documents } of asked)
    if (!packs.some(({ id }) => id === pack)) strays.push(...documents.slice(0, 1).map((first) => ofNoPack(pack, first)));
  const withAsked = packs.map((pack) => ({
    ...pack,
    documents: [...pack.documents, ...asked.flatMap((each) => (each.pack === pack.id ? each.documents : []))],
  }));
  return {
    packs: withPhrases(withAsked, rulesFolder, base, reader),
    fixtures: [...fixtures.documents, ...loaded.flatMap(({ documents }) => documents)].filter(isFixture),
    findings: [...loaded, fixtures, ...asked].flatMap((each) => each.findings).concat(strays),
    languages: foldersIn(languagesFolder).map((folder) => basename(folder)),
    translations: (language) => readTranslations(join(languagesFolder, language), language, base, reader),
    reader,
  };
}

function ofNoPack(folder: string, { at }: Located): Finding {
  return {
    code: 'E324',
    message: `there is no pack \`${folder}\` that these requirements could belong to`,
    place: at(['kind']),
    help: 'name the folder after the pack',
  };
}

/** Reports documents that have no effect in a folder that is for one kind. */
function straysAmong(kind: string, folder: string, documents: readonly Located[]): Finding[] {
  return documents.flatMap(({ data, at }): Finding[] =>
    data.kind === kind
      ? []
      : [
          {
            code: 'E324',
            message: `a document of kind \`${data.kind}\` does not belong among the ${folder}`,
            place: at(['kind']),
            help: 'move it into the folder of a pack',
          },
        ],
  );
}

/** The tool's own phrases, which its code needs, below those of a folder of rules that is not the tool's. */
function withPhrases(packs: readonly Pack[], rulesFolder: string, base: string, reader: Reader): Pack[] {
  const [first, ...others] = packs;
  if (first === undefined || resolve(rulesFolder) === join(home, 'rules')) return [...packs];
  const folder = join(home, 'rules/base/vocabulary');
  const paths = readdirSync(folder)
    .filter((name) => name.startsWith('phrases'))
    .sort()
    .map((name) => join(folder, name));
  const { documents } = reader(paths.map((path) => ({ file: relative(base, path), bytes: readFileSync(path) })));
  return [{ ...first, documents: [...documents, ...first.documents] }, ...others];
}

/** The translations of one folder; what is none, or is into another language, is reported. */
function readTranslations(
  folder: string,
  language: string,
  base: string,
  reader: Reader,
): ReturnType<LoadedPacks['translations']> {
  const { documents, findings } = readFolder(folder, base, reader);
  const strays = documents.flatMap(({ data, at }): Finding[] => {
    if (data.kind === 'translation' && data.language === language) return [];
    const [what, path] =
      data.kind === 'translation'
        ? [`a translation into \`${data.language}\``, 'language']
        : [`a document of kind \`${data.kind}\``, 'kind'];
    const message = `${what} does not belong among the translations into \`${language}\``;
    return [{ code: 'E324', message, place: at([path]), help: 'move it into the folder that it belongs to' }];
  });
  const isTranslation = (each: Located): each is Located<TranslationDocument> => each.data.kind === 'translation';
  return { documents: documents.filter(isTranslation), findings: [...findings, ...strays] };
}

function isFixture(each: Located): each is Located<FixtureDocument> {
  return each.data.kind === 'fixture';
}

/** Links and tailors what was read, for a date. */
export function rulebookOn(loaded: Loaded, on: string): { rulebook?: Rulebook; findings: Finding[] } {
  const translations = translationsFor(loaded);
  const { rules, findings } = linkRules(loaded.packs, loaded.clinicDocuments, on, proveStrict, {
    languages: loaded.languages,
    documents: translations.documents,
  });
  const all = [...translations.findings, ...findings];
  return rules === undefined || hasErrors(all) ? { findings: all } : { rulebook: tailorRules(rules), findings: all };
}

/** The translations into the language that the clinic's document asks for; none where it asks for none. */
export function translationsFor({ clinicDocuments, languages, translations }: Loaded): ReturnType<LoadedPacks['translations']> {
  const clinic = clinicDocuments.find(({ data }) => data.kind === 'clinic')?.data;
  const language = clinic?.kind === 'clinic' ? clinic.document.language : undefined;
  return language !== undefined && languages.includes(language) ? translations(language) : { documents: [], findings: [] };
}

const empty: { documents: Located[]; findings: Finding[] } = { documents: [], findings: [] };

function readerFor(rulesFolder: string): Reader {
  const folder = join(rulesFolder, 'schema');
  const files = readdirSync(folder).filter((name) => name.endsWith('.json'));
  const schemas = files.map((name) => JSON.parse(readFileSync(join(folder, name), 'utf8')) as object);
  return createReader(schemas, documentCache());
}

function readFolder(folder: string, base: string, reader: Reader): { documents: Located[]; findings: Finding[] } {
  const { files, findings } = loadFolder(folder, base);
  const read = reader(files);
  return { documents: read.documents, findings: [...findings, ...read.findings] };
}

function foldersIn(folder: string): string[] {
  if (!existsSync(folder)) return [];
  return readdirSync(folder)
    .map((name) => join(folder, name))
    .filter((path) => statSync(path).isDirectory())
    .sort();
}

function asPack(documents: Located[]): Pack | undefined {
  const head = documents.find((each): each is Located<PackDocument> => each.data.kind === 'pack');
  return head && { id: head.data.id, head, documents };
}
