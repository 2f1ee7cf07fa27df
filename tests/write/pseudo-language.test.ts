import { describe, expect, it } from 'vitest';
import { manualOf } from '../../src/cli/load-manual.js';
import type { Rulebook } from '../../src/link/rulebook.js';
import { units } from '../../src/measure/units.js';
import { printMarkdown } from '../../src/write/print/print-markdown.js';
import { pseudo, pseudoRulebook } from './pseudo-language.js';

/** Letters that no language changes: signs of units, ids of packs and regions, letters of annexes. */
const signs = new Set([
  ...units.filter(({ one, many }) => one === many && !/ per |^CFU|^EU|^log$/.test(one)).map(({ one }) => one),
  ...['base', 'us', 'ca-on', 'US', 'CA-ON'],
]);

const longestFirst = [...signs]
  .sort((a, b) => b.length - a.length)
  .map((sign) => sign.replace(/[.*+?^${}()|[\]\\]/g, String.raw`\$&`));
const sign = new RegExp(String.raw`(?<![\p{L}])(?:${longestFirst.join('|')})(?![\p{L}\d])`, 'gu');

/** Every id of a rulebook that is a single word, so that it could be taken for one. */
function plainIds({ limits, tasks, procedures, forms, decisions }: Rulebook): ReadonlySet<string> {
  const steps = [...procedures.values()].flatMap((procedure) => procedure.steps.map(({ name }) => name));
  return new Set([
    ...limits.keys(),
    ...tasks.keys(),
    ...procedures.keys(),
    ...forms.keys(),
    ...decisions.keys(),
    ...steps,
    ...guides,
  ]);
}

/** Ids that templates give to what they say of their own. */
const guides = ['heat', 'hurt', 'infection', 'chemicals', 'exceptions', 'precedence', 'pressure', 'sharps'];

/** What is left of a page when all that was translated, and all that no language changes, is taken away. */
function leftOver(line: string, ids: ReadonlySet<string>): string {
  return line
    .replace(/\]\(#[^)]*\)/g, ']')
    .replace(/⟦[^⟦⟧]*⟧/g, '')
    .replace(/\b\d{1,2}(?:er)? (?:\p{L}+) \d{4}\b/gu, '')
    .replace(/\b[\da-f]{12}\b/g, '')
    .replace(/\b[A-H](?:\.\d+)? /g, '')
    .replace(/[([][A-H](?:\.\d+)?[)\];, ]/g, '')
    .replace(/(?<![\p{L}\d])[a-z\d]+(?:[./-][a-z\d]+)+(?![\p{L}\d])/gu, '')
    .replace(/(?<!\p{L})[a-z]+(?!\p{L})/gu, (word) => (ids.has(word) ? '' : word))
    .replace(sign, '');
}

describe.each(['harrow-mills', 'piedra-alta', 'pointe-aux-merisiers'])('the manual of %s in a language of brackets', (seed) => {
  const rulebook = pseudoRulebook(seed);
  const manual = manualOf(rulebook);
  const page = printMarkdown(manual);
  const ids = plainIds(rulebook);

  it('has no finding', () => {
    expect(manual.findings).toEqual([]);
  });

  it('prints no word that cannot be translated', () => {
    const words = page.split('\n').flatMap((line, index) => {
      const left = leftOver(line, ids);
      return /\p{L}/u.test(left) ? [`${index + 1}: ${left.trim()}`] : [];
    });
    expect(words).toEqual([]);
  });

  it('writes numbers and days as the language does', () => {
    const numbers = page.match(/(?<![\d.])\d+[.,]\d+ (?:mbar|mm|kPa|µS\/cm)/g) ?? [];
    expect(numbers.length).toBeGreaterThan(0);
    expect(numbers.filter((number) => number.includes('.'))).toEqual([]);
    expect(page.includes('1er décembre 2026')).toBe(true);
  });
});

describe('the language of brackets', () => {
  it.each([
    ['Wait [](limit:x) at most.', '⟦Wait⟧ [](limit:x) ⟦at most⟧.'],
    ['| {{label}} | {{#if lower}}at most{{/if}} |', '| {{label}} | {{#if lower}}⟦at most⟧{{/if}} |'],
  ])('%s', (text, said) => {
    expect(pseudo(text)).toBe(said);
  });
});
