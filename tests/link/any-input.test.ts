import fc from 'fast-check';
import { expect, it } from 'vitest';
import { parse, stringify } from 'yaml';
import { check, houseFiles } from './house.js';

/** The house, with a policy, a change of it, and what a written program asks. */
const files = new Map([
  ...houseFiles(),
  [
    'rules/base/hands.yaml',
    `kind: policy
id: hands
title: Hands
stage: cleaning
purpose: Nothing travels on them.
who: [cleaner]
only-when: { clinic.soft-water: true }
points:
  - { id: wash, say: "Wash them within [](limit:longest-wait).", why: Soil sticks., caution: Hot water scalds., if-not: Ask. }
  - { id: dry, say: Dry them., only-when: { clinic.soft-water: true }, source: { id: sink-guide, at: "4.1", evidence: read } }
procedures: [wash]
tasks: [clean-filter]
decisions: [washer-fit]
forms: [washer-log]
source: common-practice
`,
  ],
  [
    'rules/regions/north/hands.yaml',
    `kind: overrides
changes:
  - { change: add-point, policy: hands, after: wash, because: It is better., point: { id: soap, say: Take soap. } }
  - { change: replace-point, policy: hands, because: It is better., point: { id: dry, say: Dry them well. } }
`,
  ],
  [
    'rules/regions/north/program.yaml',
    `kind: requirements
source: sink-guide
items:
  - { id: asked, item: A.1, section: Hands, text: Hands are clean., evidence: read, reprocessing: true, answered-by: [policy:hands/soap, section:cleaning] }
  - { id: open, item: A.2, section: Hands, text: More., clause: "7", evidence: recalled, reprocessing: false }
`,
  ],
]);
const parsed = new Map([...files].map(([path, text]) => [path, parse(text) as unknown]));

/** Every place in the house: a file and a path in it. */
const places = [...parsed].flatMap(([file, data]) => pathsIn(data).map((path) => ({ file, path })));

/** What is put in a place: everything that stands somewhere in the house, and what a hurried or hostile hand writes. */
const others = [
  ...new Set([...parsed.values()].flatMap(leavesOf)),
  ...[
    null,
    '',
    ' ',
    0,
    -1,
    2.5,
    1e21,
    Number.NaN,
    true,
    [],
    {},
    [[]],
    [null],
    { a: 1 },
    { not: {} },
    { all: [] },
    { limit: 'longest-wait' },
  ],
  ...[
    'constructor',
    '__proto__',
    'toString',
    'hasOwnProperty',
    '-5 min',
    '1e300 a',
    '134 °F',
    '2026-02-30',
    '9999-12-31',
    '0000-01-01',
  ],
  ...[
    '1 d or 1 cycle',
    'A0 0',
    '0 mm',
    '[](limit:',
    '[](every:clean-filter)',
    '[](term:constructor)',
    'x'.repeat(3000),
    '\u202e',
    'wash/start',
  ],
  { any: [{ 'load.way': 'ask' }, { not: { 'item.bore': { between: ['1 mm', '2 mm'] } } }] },
  { 'load.used-on': { above: '2026-01-01' }, 'load.pieces': { at: 3 } },
];

/** What stands elsewhere in the house under the same key, and so mostly fits the schema. */
const likeThis = new Map([...new Set(places.map(nameOf))].map((name) => [name, places.filter((each) => nameOf(each) === name)]));

const change = fc.constantFrom(...places).chain((place) =>
  fc.record({
    place: fc.constant(place),
    by: fc.oneof(
      {
        weight: 6,
        arbitrary: fc
          .constantFrom(...(likeThis.get(nameOf(place)) ?? []))
          .map((each) => valueAt(parsed.get(each.file), each.path)),
      },
      { weight: 3, arbitrary: fc.constantFrom(...others) },
      { weight: 1, arbitrary: fc.jsonValue() },
    ),
    drop: fc.nat({ max: 9 }).map((number) => number === 0),
  }),
);

it('is checked without failing, whatever stands anywhere in it, and each finding has a place', () => {
  fc.assert(
    fc.property(fc.array(change, { minLength: 1, maxLength: 3 }), fc.constantFrom('2026-06-01', '2019-01-01'), (changes, on) => {
      const changed = new Map(parsed);
      for (const { place, by, drop } of changes)
        changed.set(place.file, replaced(changed.get(place.file), place.path, drop ? undefined : by));
      const texts = new Map([...changed].map(([file, data]) => [file, stringify(data, { aliasDuplicateObjects: false })]));
      const { findings } = check(texts, on);
      for (const { place, message, code } of findings) {
        const line = texts.get(place.file)?.split('\n')[place.line - 1];
        expect(line, `${code} ${message} at ${place.file}:${place.line}`).toBeDefined();
        expect(place.column).toBeLessThanOrEqual((line ?? '').length + 1);
        expect(message).not.toMatch(/\[object|undefined|\n/);
      }
      const shown = findings.map(({ code, message, place }) => JSON.stringify([code, message, place]));
      expect(shown.length - new Set(shown).size, shown.join('\n')).toBe(0);
    }),
    { numRuns: Number(process.env['RUNS'] ?? 250), seed: Number(process.env['SEED'] ?? 1) },
  );
});

/** The key of a place; for an entry of a list, the key of the list. */
function nameOf({ path }: { path: readonly (string | number)[] }): string {
  return String(path.findLast((part) => !/^\d+$/.test(String(part))));
}

function valueAt(data: unknown, path: readonly (string | number)[]): unknown {
  return path.reduce<unknown>(
    (value, key) =>
      typeof value === 'object' && value !== null ? Object.entries(value).find(([each]) => each === String(key))?.[1] : undefined,
    data,
  );
}

function pathsIn(data: unknown): (string | number)[][] {
  if (typeof data !== 'object' || data === null) return [];
  return Object.entries(data).flatMap(([key, each]) => [[key], ...pathsIn(each).map((path) => [key, ...path])]);
}

function leavesOf(data: unknown): unknown[] {
  return typeof data === 'object' && data !== null ? Object.values(data).flatMap(leavesOf) : [data];
}

function replaced(data: unknown, [key, ...rest]: readonly (string | number)[], by: unknown): unknown {
  if (key === undefined) return by;
  if (Array.isArray(data)) {
    const next = data.map((each, index) => (String(index) === String(key) ? replaced(each, rest, by) : (each as unknown)));
    return next.filter((each) => each !== undefined);
  }
  if (typeof data !== 'object' || data === null) return data;
  const entries = Object.entries(data).map(([name, each]) => [
    name,
    name === String(key) ? replaced(each, rest, by) : (each as unknown),
  ]);
  return Object.fromEntries(entries.filter(([, each]) => each !== undefined));
}
