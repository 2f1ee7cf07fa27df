import { fileURLToPath } from 'node:url';
import { beforeAll, describe, expect, it } from 'vitest';
import { proveStrict } from '../../src/analyse/prove-strict.js';
import { home, loadPacks } from '../../src/cli/load-rulebook.js';
import { packsAlone, regionsOf } from '../../src/link/packs-alone.js';
import type { Rulebook } from '../../src/link/rulebook.js';
import { checkWording, countOrders, summarize } from '../../src/write/gate/check-wording.js';
import { imperatives } from '../../src/write/gate/words-en.js';
import { countSyllables, readability } from '../../src/write/text/readability.js';
import { smallRulebook } from './small-rulebook.js';

describe('readability', () => {
  it.each([
    ['take', 1],
    ['table', 2],
    ['used', 1],
    ['wanted', 2],
    ['handled', 2],
    ['places', 2],
    ['rinses', 2],
    ['whole', 1],
    ['sterilizer', 4],
    ['temperature', 4],
    ['the', 1],
    ['134', 1],
  ])('%s has %i syllables', (word, syllables) => {
    expect(countSyllables(word)).toBe(syllables);
  });

  it('follows the formula of Flesch and Kincaid', () => {
    // 6 words, 1 sentence, 6 syllables; then 4 words, 2 sentences, 8 syllables.
    expect(readability('The cat sat on the mat.', 'en-US').score).toBeCloseTo(0.39 * 6 + 11.8 - 15.59, 10);
    expect(readability('Water rinses. Paper handled.', 'en-GB').score).toBeCloseTo(0.39 * 2 + 11.8 * 2 - 15.59, 10);
  });

  it('follows LIX in other languages', () => {
    const found = readability('Fermez le couvercle. Attendez.', 'fr-CA');
    expect(found).toMatchObject({ formula: 'LIX', words: 4, sentences: 2 });
    expect(found.score).toBeCloseTo(4 / 2 + (100 * 2) / 4, 10);
  });

  it('is 0 without words', () => {
    expect(readability(' … ', 'en').score).toBe(0);
  });
});

describe('orders', () => {
  it.each([
    ['Open the lid.', 1],
    ['Open the lid, pull the basket out and shake it.', 3],
    ['Do not pull. Wait for it; then lift it.', 3],
    ['What is wet goes back, and a dry one stays.', 0],
    ['Follow [](procedure:wash) and [](procedure:dry).', 1],
  ])('%s gives %i', (text, orders) => {
    expect(countOrders(text)).toBe(orders);
  });
});

describe('what is worded worse than it need be', () => {
  const place = { file: 'rules/base/wash.yaml', line: 3, column: 5 };
  const [first, ...steps] = smallRulebook().procedures.get('wash')?.steps ?? [];
  const wash = smallRulebook().procedures.get('wash');
  const check = (words: string) =>
    checkWording(
      smallRulebook({
        decisions: new Map(),
        tasks: new Map(),
        procedures: new Map(
          wash === undefined || first === undefined
            ? []
            : [['wash', { ...wash, steps: [{ ...first, do: words, place }, ...steps] }]],
        ),
      }),
      { templates: new Map(), textOf: () => `\n\n    id: x\n    do: ${words}\n` },
    ).findings;

  it('W514 is a step of many orders, at its first word', () => {
    expect(check('Open it, rinse it, dry it and close it.')).toEqual([
      {
        code: 'W514',
        message: 'step `wash/start` gives 4 orders at once, more than 3',
        place: { ...place, line: 4, column: 9 },
        help: 'make a step of each, or say them shorter',
      },
    ]);
  });

  it('W515 is a long sentence, at its first word', () => {
    const found = check(`Look. It is ${'very '.repeat(30)}wet.`);
    expect(found).toMatchObject([{ code: 'W515', place: { line: 4, column: 15 } }]);
  });

  it('W516 is a hard text', () => {
    const hard = 'Immediately neutralize deteriorated decontamination preparations utilizing appropriate instrumentation.';
    expect(check(Array.from({ length: 6 }, () => hard).join(' '))).toMatchObject([
      { code: 'W516', message: expect.stringMatching(/^procedure `wash` is hard to read: Flesch-Kincaid \d+\.\d, above 8$/) },
    ]);
  });
});

describe('the packs that come with the tool', () => {
  const books: Rulebook[] = [];

  beforeAll(() => {
    const { packs } = loadPacks(fileURLToPath(new URL('../../rules/', import.meta.url)), home, 'rules');
    for (const region of regionsOf(packs)) {
      const rulebook = packsAlone(packs, region, '2026-12-01', proveStrict).rulesOn('2026-12-01');
      if (rulebook?.language.startsWith('en')) books.push(rulebook);
    }
  });

  it('give no step more orders than a person can keep, no long sentence, no hard text', () => {
    expect(books.length).toBeGreaterThan(4);
    expect([...new Set(books.flatMap((book) => checkWording(book).findings.map(({ message }) => message)))]).toEqual([]);
  });

  it('read like a book for children of ten, and none worse than one for thirteen', () => {
    for (const book of books) {
      const found = summarize(checkWording(book));
      expect(found?.mean, book.clinic.region).toBeLessThan(4.5);
      expect(found?.hardest.level.score, `${book.clinic.region}, ${found?.hardest.id}`).toBeLessThan(8);
    }
  });

  it('begin their steps with verbs that the gate knows, or with none', () => {
    const firsts = books.flatMap(({ procedures, policies, tasks }) =>
      [
        ...[...procedures.values()].flatMap(({ steps }) => steps.map((step) => step.do)),
        ...[...policies.values()].flatMap(({ points }) => points.map((point) => point.say)),
        ...[...tasks.values()].flatMap(({ steps }) => steps),
      ].map((text) => /^[\p{L}']+/u.exec(text)?.[0].toLowerCase() ?? ''),
    );
    const unknown = [...new Set(firsts)].filter((word) => word !== '' && !imperatives.has(word) && !noVerbs.has(word));
    expect(unknown).toEqual([]);
  });
});

/** What steps of the packs begin with besides verbs: the clause, the question or the thing that comes before. */
const noVerbs = new Set(
  `a after another any at before beside blood both breathed by detergent did during each every for growth handpiece hollow if in inside is it
  joint no not nothing on once one only opened or pricked someone staying swallowed sterilizer steriliser that the their there this to two until was washer what when
  where whoever with without while what`.split(/\s+/),
);
