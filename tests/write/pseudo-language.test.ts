import { describe, expect, it } from 'vitest';
import { loadAssets } from '../../src/cli/load-assets.js';
import { manualOf } from '../../src/cli/load-manual.js';
import type { Rulebook } from '../../src/link/rulebook.js';
import { units } from '../../src/measure/units.js';
import { printHtml } from '../../src/write/print/print-html.js';
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
function plainIds({ limits, tasks, procedures, forms, decisions, policies, requirements }: Rulebook): ReadonlySet<string> {
  const steps = [...procedures.values(), ...policies.values()].flatMap((each) =>
    ('steps' in each ? each.steps : each.points).map(({ id }) => id.split('/')[1] ?? id),
  );
  const rules = [...decisions.values()].flatMap((decision) => decision.rules.map(({ id }) => id.split('/')[1] ?? id));
  return new Set([
    ...rules,
    ...limits.keys(),
    ...policies.keys(),
    ...requirements.keys(),
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

/** Attributes that are read aloud or shown. */
const spoken = / (?:aria-label|title|alt|placeholder|data-[a-z-]+)="([^"]*)"/g;

/** Names of months at the head of the year's figure. */
const months = new RegExp(
  Array.from({ length: 12 }, (_, month) =>
    new Intl.DateTimeFormat('fr-CA', { month: 'short', timeZone: 'UTC' }).format(Date.UTC(2026, month, 15)),
  ).join('|'),
  'gi',
);

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

  it('prints no such word as a web page', async () => {
    const html = String(await printHtml(manual, loadAssets()));
    const words = html
      .replace(/<(style|script)[\s\S]*?<\/\1>/g, '')
      .replace(/<(?:[^>"]|"[^"]*")*>/g, (tag) => [...tag.matchAll(spoken)].map(([, said]) => `\n${said}\n`).join('') || '\n')
      // Figures break their lines within a text.
      .replace(/⟦[^⟦⟧]*⟧/g, '')
      .replace(months, '')
      .split('\n')
      .map((line) => leftOver(line.replaceAll('{count}', ''), ids))
      .filter((left) => /\p{L}{2}/u.test(left));
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
