import { readdirSync, readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { fileURLToPath } from 'node:url';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { parse } from 'yaml';
import { equal, ucs2length } from '../../src/read/validator-helpers.js';
import { madeFrom, validators } from '../../src/read/validators.gen.js';
import { compileSchemas, digestOfSchemas, validatorsFor } from '../../src/read/validators.js';
import { readSchemas } from '../tools/generate-validators.js';

const project = fileURLToPath(new URL('../../', import.meta.url));
const schemas = readSchemas();
const compiled = compileSchemas(schemas);
const kinds = Object.keys(validators);

/** Documents of the project, some of each kind. */
const everything = ['rules', 'seeds'].flatMap((folder) =>
  readdirSync(project + folder, { recursive: true, encoding: 'utf8' })
    .filter((name) => name.endsWith('.yaml'))
    .map((name) => parse(readFileSync(`${project}${folder}/${name}`, 'utf8')) as { kind: string }),
);
const documents = kinds.flatMap((kind) => everything.filter((each) => each.kind === kind).slice(0, 6));

describe('the validators made ahead of time', () => {
  it('are taken where the schemas are the same, and only there', () => {
    expect(digestOfSchemas(schemas)).toBe(madeFrom);
    expect(digestOfSchemas([...schemas].reverse())).toBe(madeFrom);
    expect(validatorsFor(schemas)('clinic')).toBe(validators['clinic']);
    const others = schemas.map((schema) =>
      '$id' in schema && schema.$id === 'terms.json' ? { ...schema, title: 'Words' } : schema,
    );
    expect(validatorsFor(others)('clinic')).not.toBe(validators['clinic']);
    expect(validatorsFor(others)('terms')({ kind: 'terms' })).toBe(false);
  });

  it('find the same as those compiled now, in documents of every kind and in each with something wrong', () => {
    let wrong = 0;
    expect(new Set(documents.map(({ kind }) => kind)).size).toBe(kinds.length);
    for (const document of documents)
      for (const each of [document, ...broken(document)])
        for (const kind of [document.kind, kinds[wrong % kinds.length] ?? 'terms']) {
          const [ahead, now] = [validatorsFor(schemas)(kind), compiled(kind)];
          expect(ahead(each)).toBe(now(each));
          expect(ahead.errors).toEqual(now.errors);
          wrong += ahead.errors?.length ?? 0;
        }
    expect(wrong).toBeGreaterThan(1000);
  });
});

describe('what they call', () => {
  const ajv = (name: string): unknown => createRequire(import.meta.url)(`ajv/dist/runtime/${name}`).default;

  it('counts characters as ajv does', () => {
    const counted = ajv('ucs2length') as typeof ucs2length;
    fc.assert(fc.property(fc.string({ unit: 'binary' }), (text) => ucs2length(text) === counted(text)));
    for (const text of ['', 'é', '\ud83d\ude00a\ud83d', '\ude00\ud83d']) expect(ucs2length(text)).toBe(counted(text));
  });

  it('compares plain data as ajv does', () => {
    const same = ajv('equal') as typeof equal;
    fc.assert(
      fc.property(fc.jsonValue({ maxDepth: 2 }), fc.jsonValue({ maxDepth: 2 }), (a, b) => {
        // ajv stumbles over keys such as `toString`, which it takes for methods.
        fc.pre(!/"(?:toString|valueOf|constructor)":/.test(JSON.stringify([a, b])));
        const pairs = [
          [a, structuredClone(a)],
          [a, b],
          [[a], { 0: a }],
          [
            { a, b },
            { b, a },
          ],
          [{ a, b: 1 }, { a }],
        ];
        return pairs.every(([one, other]) => equal(one, other) === same(one, other));
      }),
    );
  });
});

/** A document with something wrong at its head and deep in it. */
function broken(document: object): unknown[] {
  const entries = Object.entries(document);
  return entries.flatMap(([key, value]) => [
    { ...document, [key]: 7 },
    { ...document, [key]: [value, value] },
    { ...document, [key]: deepest(value) },
    Object.fromEntries(entries.filter(([each]) => each !== key)),
  ]);
}

function deepest(value: unknown): unknown {
  if (Array.isArray(value)) return value.map((each, index) => (index === value.length - 1 ? deepest(each) : each));
  if (value === null || typeof value !== 'object') return { stray: value };
  const entries = Object.entries(value);
  return Object.fromEntries([
    ...entries.map(([key, each], index) => [key, index === entries.length - 1 ? deepest(each) : each]),
    ['Stray key', 1],
  ]);
}
