import { toString as textOf } from 'mdast-util-to-string';
import { describe, expect, it } from 'vitest';
import type { Condition, Test } from '../../src/link/rulebook.js';
import { sayCondition, sayNeeds } from '../../src/write/model/say-condition.js';
import type { Markdown } from '../../src/write/text/markdown.js';
import { buildTree } from '../../src/write/tree/build-tree.js';
import { smallRulebook } from './small-rulebook.js';

const rulebook = smallRulebook();

function plain({ markdown }: Markdown): string {
  return textOf(buildTree(markdown, rulebook).tree);
}

function say(condition: Condition): string[] {
  return sayCondition(rulebook, condition).lines.map(plain);
}

const is = (fact: string, test: Test): Condition => ({ kind: 'test', fact, test });
const oneOf = (fact: string, ...members: (string | boolean)[]): Condition => is(fact, { kind: 'one-of', members });
const not = (of: Condition): Condition => ({ kind: 'not', of });
const all = (...of: Condition[]): Condition => ({ kind: 'all', of });
const any = (...of: Condition[]): Condition => ({ kind: 'any', of });
const removes = (member: string): Condition => is('program.removes', { kind: 'any-of', members: [member] });
const compare = (fact: string, op: 'at-least' | 'at-most' | 'above' | 'below', limit?: string): Condition =>
  is(fact, { kind: 'compare', op, value: 600, shown: '12 minutes', ...(limit !== undefined && { limit }) });

describe('a test in words', () => {
  it.each([
    ['an enum', oneOf('load.soil', 'light', 'dried'), 'Soil: light soil or dried soil'],
    ['a yes', oneOf('load.moist', true), 'Kept moist: yes'],
    ['a no', oneOf('load.moist', false), 'Kept moist: no'],
    ['not yes', not(oneOf('load.moist', true)), 'Kept moist: no'],
    ['not a member', not(oneOf('load.soil', 'dried')), 'Soil: anything but dried soil'],
    [
      'some of a set',
      is('instrument.materials', { kind: 'any-of', members: ['aluminum', 'anodized'] }),
      'Materials include aluminum or anodized aluminum',
    ],
    [
      'all of a set',
      is('instrument.materials', { kind: 'all-of', members: ['steel', 'aluminum'] }),
      'Materials include stainless steel and aluminum',
    ],
    [
      'none of a set',
      is('instrument.materials', { kind: 'none-of', members: ['aluminum', 'anodized'] }),
      'Materials include no aluminum or anodized aluminum',
    ],
    ['a limit', compare('load.wait', 'above', 'holding.longest-wait'), 'Time since use: more than 10 minutes'],
    ['a bare number', compare('load.wait', 'at-most'), 'Time since use: at most 12 minutes'],
    ['a temperature', compare('load.heat', 'below'), 'Heat of the load: below 12 minutes'],
    ['a date', compare('load.day', 'above'), 'Day of use: after August 24, 1971'],
    ['a comparison turned round', not(compare('load.wait', 'at-least')), 'Time since use: less than 12 minutes'],
    ['the answer of another decision', oneOf('load.route', 'keep-out'), 'Washer, by our rule: keep it out'],
  ])('%s', (_, condition, words) => {
    expect(say(condition)).toEqual([words]);
  });
});

describe('conditions together', () => {
  it('prints what must all fit as lines', () => {
    expect(say(all(oneOf('load.soil', 'dried'), oneOf('load.moist', false)))).toEqual(['Soil: dried soil', 'Kept moist: no']);
  });

  it('says a range in one line', () => {
    expect(say(all(compare('load.wait', 'above'), oneOf('load.moist', true), compare('load.wait', 'at-most')))).toEqual([
      'Time since use: more than 12 minutes and at most 12 minutes',
      'Kept moist: yes',
    ]);
  });

  it('says alternatives in one line, with brackets where one holds several tests', () => {
    const condition = any(oneOf('load.soil', 'dried'), all(oneOf('load.moist', false), oneOf('load.soil', 'light')));
    expect(say(condition)).toEqual(['Soil: dried soil; or (kept moist: no; and soil: light soil)']);
  });

  it('pushes a negation inward', () => {
    expect(say(not(any(oneOf('load.soil', 'dried'), oneOf('load.moist', true))))).toEqual([
      'Soil: anything but dried soil',
      'Kept moist: no',
    ]);
  });

  it('leaves out what the clinic has settled', () => {
    expect(say(all(oneOf('clinic.implants', false), oneOf('load.moist', true)))).toEqual(['Kept moist: yes']);
    expect(sayCondition(rulebook, oneOf('clinic.implants', true)).holds).toBe('never');
    expect(sayCondition(rulebook, oneOf('clinic.implants', false)).holds).toBe('always');
    expect(sayCondition(rulebook, not(oneOf('clinic.implants', true))).holds).toBe('always');
  });

  it('reads what a program offers as a verb', () => {
    expect(sayNeeds(rulebook, removes('dried'), []).map(plain)).toEqual(['Removes dried soil']);
  });

  it('says ways to meet a need on lines of their own, and leaves out those that no program goes', () => {
    const need = any(removes('dried'), all(removes('light'), compare('program.time', 'at-least')));
    expect(sayNeeds(rulebook, need, []).map(plain)).toEqual([
      'Removes dried soil',
      'or removes light soil, whole duration: at least 12 minutes',
    ]);
    expect(sayNeeds(rulebook, need, [{ 'program.removes': ['dried'] }]).map(plain)).toEqual(['Removes dried soil']);
  });

  it('leads from a limit to its line in the list', () => {
    const [line] = sayCondition(rulebook, compare('load.wait', 'above', 'holding.longest-wait')).lines;
    expect(line?.markdown).toContain('[](limit:holding.longest-wait)');
  });
});
