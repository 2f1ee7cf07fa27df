import { type Given, truthOf } from '../../decide/truth.js';
import type { Comparison, Condition, Test } from '../../link/rulebook.js';

/** A condition as it is printed: no `not` but on a single test, nothing nested that need not be. */
export type Shape = { kind: 'all' | 'any'; of: Shape[] } | { kind: 'test'; fact: string; test: Test; negated: boolean };

/**
 * Brings a condition into the shape that is printed. What the given facts already settle is left out: an always true
 * condition becomes `all` of nothing, an always false one `any` of nothing. The meaning stays the same in
 * three-valued logic.
 */
export function shapeCondition(condition: Condition, given: Given): Shape {
  return flatten(shape(condition, false, given));
}

function shape(condition: Condition, negated: boolean, given: Given): Shape {
  const truth = truthOf(condition, given);
  if (truth !== undefined) return { kind: truth === negated ? 'any' : 'all', of: [] };
  switch (condition.kind) {
    case 'not':
      return shape(condition.of, !negated, given);
    case 'all':
    case 'any':
      return {
        kind: (condition.kind === 'all') === negated ? 'any' : 'all',
        of: condition.of.map((each) => shape(each, negated, given)),
      };
    case 'test':
      return { kind: 'test', fact: condition.fact, ...(negated ? negate(condition.test) : { test: condition.test, negated }) };
  }
}

const opposite: Record<Comparison, Comparison> = {
  'at-least': 'below',
  'at-most': 'above',
  above: 'at-most',
  below: 'at-least',
};

function negate(test: Test): { test: Test; negated: boolean } {
  switch (test.kind) {
    case 'compare':
      return { test: { ...test, op: opposite[test.op] }, negated: false };
    case 'any-of':
      return { test: { ...test, kind: 'none-of' }, negated: false };
    case 'none-of':
      return { test: { ...test, kind: 'any-of' }, negated: false };
    case 'one-of':
    case 'all-of':
      return { test, negated: true };
  }
}

function flatten(shape: Shape): Shape {
  if (shape.kind === 'test') return shape;
  const parts = shape.of.map(flatten).flatMap((part) => (part.kind === shape.kind ? part.of : [part]));
  const [only] = parts;
  return parts.length === 1 && only !== undefined ? only : { kind: shape.kind, of: parts };
}
