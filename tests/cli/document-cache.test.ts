import { execFileSync } from 'node:child_process';
import { existsSync, readdirSync, readFileSync, rmSync, truncateSync, utimesSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { proveStrict } from '../../src/analyse/prove-strict.js';
import { checkRulebook } from '../../src/check/check-rulebook.js';
import { cacheFolder, createDocumentCache, type KeptCache } from '../../src/cli/document-cache.js';
import { loadFolder } from '../../src/cli/load-folder.js';
import { manualOf } from '../../src/cli/load-manual.js';
import { loadClinic, loadPacks, rulebookOn } from '../../src/cli/load-rulebook.js';
import { packsAlone } from '../../src/link/packs-alone.js';
import { createReader, type Located, type Path, type SourceFile } from '../../src/read/read-documents.js';
import { readSchemas } from '../tools/generate-validators.js';
import { project, temporaryFolder } from './run.js';

const schemas = readSchemas();
const files = ['rules', 'seeds'].flatMap((folder) => loadFolder(join(project, folder), project).files);
const uncached = createReader(schemas)(files);

/** Words over several lines, in all the ways in which YAML knows them. */
const manyLines = [
  'kind: terms',
  'terms:',
  '  block: # a comment',
  '    label: "over',
  '',
  '      two lines"',
  '    definition: >-',
  '      one [](term:block)',
  '',
  '      two [](term:plain)',
  '  plain: { label: plain, definition: plain',
  "      words 'in' it [](term:block) }",
  '  134: { label: a number for a key, definition: "" }',
  '  ü🙂: { label: ü, definition: ü }',
];

describe('the folder', () => {
  it('is where the system keeps such things', () => {
    expect(cacheFolder({ XDG_CACHE_HOME: '/x' }, 'linux')).toBe(join('/x', 'clinic-rulebook'));
    expect(cacheFolder({ XDG_CACHE_HOME: 'x', HOME: '/h' }, 'linux')).toMatch(/\.cache.clinic-rulebook$/);
    expect(cacheFolder({ LOCALAPPDATA: '/local' }, 'win32')).toBe(join('/local', 'clinic-rulebook'));
    expect(cacheFolder({ XDG_CACHE_HOME: '/x', CLINIC_RULEBOOK_CACHE: 'off' }, 'linux')).toBeUndefined();
  });
});

describe('a document that was kept', () => {
  const endings = ['\n', '\r\n'].map((ending, index) => source(`many-lines-${index}.yaml`, manyLines.join(ending)));

  it('is the same as one that is read, with the name that its file has now', () => {
    const folder = temporaryFolder();
    const all = [...files, ...endings];
    const first = createDocumentCache(folder);
    createReader(schemas, first)(all.map((each) => ({ ...each, file: 'other.yaml' })));
    first.save();
    const expected = createReader(schemas)(all);
    for (const cache of [first, createDocumentCache(folder)]) {
      const counting = counted(cache);
      const { documents, findings } = createReader(schemas, counting)(all);
      expect(findings).toEqual(expected.findings);
      expect(counting.found).toBe(documents.length);
      expect(documents.length).toBe(expected.documents.length);
      for (const [index, document] of documents.entries()) expectSame(document, expected.documents[index] as Located);
    }
  });

  it('is changed by nobody', () => {
    const rules = loadPacks(join(project, 'rules'), project);
    for (const clinic of ['harrow-mills']) {
      const loaded = loadClinic(rules, join(project, 'seeds', clinic), project);
      for (const { data } of [
        ...loaded.packs.flatMap(({ documents }) => documents),
        ...loaded.fixtures,
        ...loaded.clinicDocuments,
      ])
        deepFreeze(data);
      const { rulebook } = rulebookOn(loaded, '2026-10-01');
      if (rulebook === undefined) throw new Error('it has errors');
      checkRulebook(rulebook, loaded.fixtures, packsAlone(loaded.packs, rulebook.clinic, rulebook.on, proveStrict));
      manualOf(rulebook);
    }
  });

  it('is one without findings: the others say the same each time', () => {
    const folder = temporaryFolder();
    const bad = [source('bad.yaml', 'kind: terms\nterms: { a: { lable: A } }'), source('day.yaml', 'kind: [')];
    const findings = [1, 2].map(() => {
      const cache = createDocumentCache(folder);
      const read = createReader(schemas, cache)(bad);
      cache.save();
      return read.findings;
    });
    expect(findings[0]).toEqual(createReader(schemas)(bad).findings);
    expect(findings[1]).toEqual(findings[0]);
    expect(readdirSync(folder)).toEqual([]);
  });

  it('is read again where the schemas are others', () => {
    const cache = counted(createDocumentCache());
    createReader(schemas, cache)(files.slice(0, 3));
    const others = schemas.map((schema) => ('$id' in schema && schema.$id === 'terms.json' ? { ...schema, title: 'W' } : schema));
    createReader(others, cache)(files.slice(0, 3));
    expect(cache.found).toBe(0);
  });

  it('is not written where JSON would change it', () => {
    const folder = temporaryFolder();
    const cache = createDocumentCache(folder);
    const [first] = uncached.documents;
    if (first === undefined) throw new Error('there are none');
    const data = { ...first.data, number: -0 };
    cache.put('key', { data, outline: new Int32Array([0, 0, -1, 1]) });
    expect(cache.get('key')?.data).toBe(data);
    cache.save();
    expect(createDocumentCache(folder).get('key')).toBeUndefined();
  });
});

describe('what is on disk', () => {
  const some = files.slice(0, 5);
  const filled = (folder: string): string => {
    const cache = createDocumentCache(folder);
    createReader(schemas, cache)(some);
    cache.save();
    return join(folder, readdirSync(folder).find((name) => /^documents-[0-9a-f]+$/.test(name)) ?? '');
  };
  const foundIn = (folder: string): number => {
    const cache = counted(createDocumentCache(folder));
    expect(createReader(schemas, cache)(some).documents.map(({ data }) => data)).toEqual(
      uncached.documents.slice(0, 5).map(({ data }) => data),
    );
    return cache.found;
  };

  it('is passed over where it is damaged, and written again', () => {
    const folder = temporaryFolder();
    const damages: ((bundle: string) => void)[] = [
      (bundle) => truncateSync(bundle, 2000),
      (bundle) => truncateSync(bundle, 0),
      (bundle) => writeFileSync(bundle, readFileSync(bundle, 'utf8').replace('kind', 'kine')),
      (bundle) => writeFileSync(bundle, '\n\n\t\t\n'),
      (bundle) => rmSync(bundle),
    ];
    for (const damage of damages) {
      damage(filled(folder));
      expect(foundIn(folder)).toBe(0);
      filled(folder);
      expect(foundIn(folder)).toBe(5);
    }
  });

  it('stays within bounds: of many bundles the newest are left', () => {
    const folder = temporaryFolder();
    for (let age = 1; age < 10; age += 1) {
      writeFileSync(join(folder, `documents-${age}`), '');
      utimesSync(join(folder, `documents-${age}`), 1000 - age, 1000 - age);
    }
    writeFileSync(join(folder, 'mine.txt'), '');
    const bundle = filled(folder);
    expect(readdirSync(folder).length).toBe(5);
    for (const each of [bundle, join(folder, 'mine.txt'), join(folder, 'documents-1')]) expect(existsSync(each)).toBe(true);
  });

  it('is left out where there is no place for it', () => {
    const file = join(temporaryFolder(), 'file');
    writeFileSync(file, '');
    const cache = createDocumentCache(file);
    expect(createReader(schemas, cache)(some).documents.length).toBe(5);
    expect(() => cache.save()).not.toThrow();
  });

  it('serves the command line, which says the same with and without', () => {
    const folder = temporaryFolder();
    const answer = (setting: NodeJS.ProcessEnv) =>
      execFileSync(
        process.execPath,
        ['--import', 'tsx', 'src/cli/bin.ts', 'decide', 'waiting', '--clinic', 'seeds/harrow-mills', 'load.wait=25min', '--json'],
        { cwd: project, encoding: 'utf8', env: { ...process.env, XDG_CACHE_HOME: folder, LOCALAPPDATA: folder, ...setting } },
      );
    const without = answer({ CLINIC_RULEBOOK_CACHE: 'off' });
    expect(readdirSync(folder)).toEqual([]);
    expect(answer({ CLINIC_RULEBOOK_CACHE: '' })).toBe(without);
    expect(readdirSync(join(folder, 'clinic-rulebook')).length).toBe(1);
    expect(answer({ CLINIC_RULEBOOK_CACHE: '' })).toBe(without);
  });
});

function source(file: string, text: string): SourceFile {
  return { file, bytes: new TextEncoder().encode(text) };
}

function counted(cache: KeptCache): KeptCache & { found: number } {
  return {
    ...cache,
    found: 0,
    get(key) {
      const kept = cache.get(key);
      if (kept !== undefined) this.found += 1;
      return kept;
    },
  };
}

function expectSame(kept: Located, read: Located): void {
  expect(JSON.stringify(kept.data)).toBe(JSON.stringify(read.data));
  expect([kept.file, ...placesOf(kept)]).toEqual([read.file, ...placesOf(read)]);
}

/** What a document answers about each of its parts, and about some that it has not. */
function placesOf({ data, at, atKey, atWords }: Located): string[] {
  return [...partsOf(data, [])].map(([path, value]) => {
    const paths = [path, [...path, 'nowhere'], [...path, 0], [...path.slice(0, -1), 99]];
    const words = typeof value === 'string' ? ['nowhere', '', value.slice(-4), ']('] : [];
    return JSON.stringify([path, paths.map(at), paths.map(atKey), words.map((each) => atWords(path, each))]);
  });
}

function* partsOf(value: unknown, path: Path): Generator<[Path, unknown]> {
  yield [path, value];
  if (value !== null && typeof value === 'object')
    for (const [key, each] of Object.entries(value)) yield* partsOf(each, [...path, key]);
}

function deepFreeze(value: unknown): void {
  if (value === null || typeof value !== 'object') return;
  Object.freeze(value);
  Object.values(value).forEach(deepFreeze);
}
