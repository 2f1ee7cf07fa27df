import { knownFacts } from '../../decide/decide.js';
import { type Given, truthOf } from '../../decide/truth.js';
import type { Condition, Fact, Rulebook, Situation, Test } from '../../link/rulebook.js';
import { calendarDay } from '../../measure/day-number.js';
import { fromBaseUnit } from '../../measure/quantity.js';
import { join, lineBreak, type Markdown, refer } from '../text/markdown.js';
import { said } from '../text/markdown-safe.js';
import { phraseMarkdown } from '../text/phrase.js';
import { sayDate } from '../text/say-date.js';
import { capitalize, joinList, joinWith } from '../text/say-list.js';
import { sayNumber } from '../text/say-number.js';
import { sayPlainQuantity } from '../text/say-quantity.js';
import { sayMember } from './say-member.js';
import { type Shape, shapeCondition } from './shape-condition.js';

/** A condition as lines that must all fit: `Soil: dried soil or stuck material`. */
export interface SaidCondition {
  /** Whether the clinic's own facts leave the condition open, or settle it for good. */
  holds: 'sometimes' | 'always' | 'never';
  lines: Markdown[];
}

/**
 * Says a condition in words. What the clinic's own facts settle is not said.
 */
export function sayCondition(rulebook: Rulebook, condition: Condition): SaidCondition {
  const shape = shapeCondition(condition, knownFacts(rulebook, {}));
  if (shape.kind !== 'test' && shape.of.length === 0) return { holds: shape.kind === 'all' ? 'always' : 'never', lines: [] };
  const lines = shape.kind === 'all' ? mergeRanges(shape.of, rulebook) : [sayShape(shape, rulebook, true)];
  return { holds: 'sometimes', lines };
}

/**
 * Says what a program must offer, as lines; alternatives have a line each. Ways to meet the need that none of the given
 * programs goes are left out, as long as one is left.
 */
export function sayNeeds(rulebook: Rulebook, condition: Condition, programs: readonly Situation[]): Markdown[] {
  const nothing: Given = { facts: rulebook.facts, valueOf: () => undefined, possibleAnswers: (fact) => fact.members };
  const stated = programs.map((facts) => knownFacts(rulebook, facts));
  const shape = shapeCondition(keepOffered(condition, stated), nothing);
  if (shape.kind === 'all') return mergeRanges(shape.of, rulebook);
  if (shape.kind === 'test') return [sayShape(shape, rulebook, true)];
  return shape.of.map((each, index) => {
    const way = sayWay(each, rulebook, index === 0);
    return index === 0 ? way : phraseMarkdown(rulebook, 'condition.or', { way });
  });
}

function sayWay(way: Shape, rulebook: Rulebook, first: boolean): Markdown {
  if (way.kind !== 'all') return sayShape(way, rulebook, first);
  return joinWith(
    rulebook,
    'list.comma',
    way.of.map((part, index) => sayShape(part, rulebook, first && index === 0)),
  );
}

function keepOffered(condition: Condition, stated: readonly Given[]): Condition {
  if (condition.kind === 'all') return { ...condition, of: condition.of.map((each) => keepOffered(each, stated)) };
  if (condition.kind !== 'any') return condition;
  const offered = condition.of.filter((way) => stated.some((given) => truthOf(way, given) === true));
  return { ...condition, of: (offered.length > 0 ? offered : condition.of).map((each) => keepOffered(each, stated)) };
}

/** Lines in one table cell; a long row of them runs on, to keep the table short. */
export function inCell(rulebook: Rulebook, lines: readonly Markdown[]): Markdown {
  return lines.length > 2 ? joinWith(rulebook, 'list.semicolon', lines) : join(lines, lineBreak);
}

function mergeRanges(shapes: readonly Shape[], rulebook: Rulebook): Markdown[] {
  const comparisons = shapes.filter(isComparison);
  return shapes.flatMap((shape) => {
    if (!isComparison(shape)) return [sayShape(shape, rulebook, true)];
    const same = comparisons.filter(({ fact }) => fact === shape.fact);
    return same[0] === shape ? [sayTests(shape.fact, same, rulebook, true)] : [];
  });
}

type TestShape = Extract<Shape, { kind: 'test' }>;

function isComparison(shape: Shape): shape is TestShape {
  return shape.kind === 'test' && shape.test.kind === 'compare';
}

function sayShape(shape: Shape, rulebook: Rulebook, first: boolean): Markdown {
  if (shape.kind === 'test') return sayTests(shape.fact, [shape], rulebook, first);
  const parts = shape.of.map((part, index) => {
    const words = sayShape(part, rulebook, first && index === 0);
    return part.kind === 'test' ? words : join(['(', words, ')']);
  });
  return joinWith(rulebook, `condition.${shape.kind}`, parts);
}

function sayTests(id: string, tests: readonly TestShape[], rulebook: Rulebook, first: boolean): Markdown {
  const fact = rulebook.facts.get(id);
  if (fact === undefined) throw new RangeError(`unknown fact \`${id}\``);
  const label = first ? capitalize(fact.label) : fact.label;
  const words = tests.map(({ test, negated }) => sayTest(fact, test, negated, rulebook));
  const said = { fact: label, value: joinWith(rulebook, 'condition.both', words) };
  return phraseMarkdown(rulebook, `condition.${howSaid(fact)}`, said);
}

/** A program's set reads as a verb (`takes cassettes`), any other as a noun (`materials include aluminum`). */
function howSaid({ type, statedBy, label }: Fact): 'is' | 'offers' | 'include' | 'includes' {
  if (type !== 'set') return 'is';
  if (statedBy === 'program' || statedBy === 'machine') return 'offers';
  return label.endsWith('s') ? 'include' : 'includes';
}

function sayTest(fact: Fact, test: Test, negated: boolean, rulebook: Rulebook): Markdown {
  if (test.kind === 'compare') return sayComparison(fact, test, rulebook);
  const [member] = test.members;
  if (negated && test.kind === 'one-of' && typeof member === 'boolean') return join([sayMember(rulebook, fact, !member)]);
  const value = joinList(
    rulebook,
    test.members.map((each) => sayMember(rulebook, fact, each)),
    test.kind === 'all-of' ? 'and' : 'or',
  );
  const around = howNegated(fact, test.kind, negated);
  return around === undefined ? value : phraseMarkdown(rulebook, `condition.${around}`, { value });
}

function howNegated(
  { type }: Fact,
  kind: Exclude<Test['kind'], 'compare'>,
  negated: boolean,
): 'not' | 'not-all' | 'no' | undefined {
  if (kind === 'none-of') return type === 'set' ? 'no' : 'not';
  if (!negated) return undefined;
  return kind === 'all-of' ? 'not-all' : 'not';
}

type CompareTest = Extract<Test, { kind: 'compare' }>;

function sayComparison(fact: Fact, test: CompareTest, rulebook: Rulebook): Markdown {
  const value = test.limit === undefined ? said(sayOperand(fact, test, rulebook), fact.id) : refer('limit', test.limit);
  return phraseMarkdown(rulebook, `compare.${howCompared(fact, test.op)}`, { value });
}

function sayOperand(fact: Fact, { value, shown, unit }: CompareTest, rulebook: Rulebook): string {
  if (fact.type === 'date') return sayDate(calendarDay(value), rulebook.language);
  if (unit !== undefined) return sayPlainQuantity(rulebook, fromBaseUnit(value, unit));
  return fact.type === 'count' ? sayNumber(rulebook.language, value) : shown;
}

function howCompared(fact: Fact, op: CompareTest['op']): string {
  if (fact.type === 'date') return { 'at-least': 'on-or-after', 'at-most': 'on-or-before', above: 'after', below: 'before' }[op];
  const warm = fact.unit === 'Cel' || fact.unit === '[degF]';
  return warm ? op : { 'at-least': 'at-least', 'at-most': 'at-most', above: 'more-than', below: 'less-than' }[op];
}
