import { knownFacts } from '../../decide/decide.js';
import { type Given, truthOf } from '../../decide/truth.js';
import type { Condition, Fact, Rulebook, Situation, Test } from '../../link/rulebook.js';
import { join, lineBreak, type Markdown, refer } from '../text/markdown.js';
import { said } from '../text/markdown-safe.js';
import { capitalize, joinList } from '../text/say-list.js';
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
  return shape.of.map((way, index) => join([index === 0 ? '' : 'or ', sayWay(way, rulebook, index === 0)]));
}

function sayWay(way: Shape, rulebook: Rulebook, first: boolean): Markdown {
  if (way.kind !== 'all') return sayShape(way, rulebook, first);
  return join(
    way.of.map((part, index) => sayShape(part, rulebook, first && index === 0)),
    ', ',
  );
}

function keepOffered(condition: Condition, stated: readonly Given[]): Condition {
  if (condition.kind === 'all') return { ...condition, of: condition.of.map((each) => keepOffered(each, stated)) };
  if (condition.kind !== 'any') return condition;
  const offered = condition.of.filter((way) => stated.some((given) => truthOf(way, given) === true));
  return { ...condition, of: (offered.length > 0 ? offered : condition.of).map((each) => keepOffered(each, stated)) };
}

/** Lines in one table cell; a long row of them runs on, to keep the table short. */
export function inCell(lines: readonly Markdown[]): Markdown {
  return join(lines, lines.length > 2 ? '; ' : lineBreak);
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
  return join(parts, shape.kind === 'any' ? '; or ' : '; and ');
}

function sayTests(id: string, tests: readonly TestShape[], rulebook: Rulebook, first: boolean): Markdown {
  const fact = rulebook.facts.get(id);
  if (fact === undefined) throw new RangeError(`unknown fact \`${id}\``);
  const label = first ? capitalize(fact.label) : fact.label;
  const words = tests.map(({ test, negated }) => sayTest(fact, test, negated, rulebook));
  return join([label, fact.type === 'set' ? ' ' : ': ', join(words, ' and ')]);
}

function sayTest(fact: Fact, test: Test, negated: boolean, rulebook: Rulebook): Markdown {
  switch (test.kind) {
    case 'one-of': {
      const members = joinList(
        test.members.map((member) => sayMember(rulebook, fact, member)),
        'or',
      );
      if (!negated) return members;
      const [member] = test.members;
      return join(typeof member === 'boolean' ? [sayMember(rulebook, fact, !member)] : ['anything but ', members]);
    }
    case 'any-of':
      return saySet(
        fact,
        '',
        joinList(
          test.members.map((member) => sayMember(rulebook, fact, member)),
          'or',
        ),
      );
    case 'all-of':
      return saySet(
        fact,
        negated ? 'not all of ' : '',
        joinList(
          test.members.map((member) => sayMember(rulebook, fact, member)),
          'and',
        ),
      );
    case 'none-of':
      return saySet(
        fact,
        'no ',
        joinList(
          test.members.map((member) => sayMember(rulebook, fact, member)),
          'or',
        ),
      );
    case 'compare':
      return join([
        sayComparison(fact, test.op),
        ' ',
        test.limit === undefined ? said(test.shown, fact.id) : refer('limit', test.limit),
      ]);
  }
}

/** A program's set reads as a verb (`takes cassettes`), any other as a noun (`materials include aluminum`). */
function saySet(fact: Fact, before: string, members: Markdown): Markdown {
  if (fact.type !== 'set') return join([before === 'no ' ? 'anything but ' : before, members]);
  const verb =
    fact.statedBy === 'program' || fact.statedBy === 'machine' ? '' : fact.label.endsWith('s') ? 'include ' : 'includes ';
  return join([verb, before, members]);
}

function sayComparison(fact: Fact, op: Extract<Test, { kind: 'compare' }>['op']): string {
  if (fact.type === 'date') return { 'at-least': 'on or after', 'at-most': 'on or before', above: 'after', below: 'before' }[op];
  const warm = fact.unit === 'Cel' || fact.unit === '[degF]';
  return {
    'at-least': 'at least',
    'at-most': 'at most',
    above: warm ? 'above' : 'more than',
    below: warm ? 'below' : 'less than',
  }[op];
}
