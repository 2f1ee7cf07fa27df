import type { Condition, Fact, Test } from '../../link/rulebook.js';
import { calendarDay } from '../../measure/day-number.js';
import { boundOf, type KleeneWriter, writeKleene } from '../contract.js';

/** An expression of JSON Logic. */
export type Logic = boolean | number | string | null | Logic[] | { [operator: string]: Logic };

export function variable(path: string): Logic {
  return { var: path };
}

export function and(parts: readonly Logic[]): Logic {
  return joined('and', parts, true);
}

export function or(parts: readonly Logic[]): Logic {
  return joined('or', parts, false);
}

export function not(part: Logic): Logic {
  return { '!': [part] };
}

/** Always written with two parts or more, so that the result is a truth value in every implementation. */
function joined(operator: 'and' | 'or', parts: readonly Logic[], empty: boolean): Logic {
  const [only] = parts;
  if (only === undefined) return empty;
  return parts.length === 1 ? only : { [operator]: [...parts] };
}

/** A condition on `facts.…` and `answers.…`. Every test carries its guard: engines read a missing number as 0. */
export function conditionToLogic(condition: Condition, side: 'certain' | 'possible', facts: ReadonlyMap<string, Fact>): Logic {
  return writeKleene(condition, side, facts, writer);
}

const factPath = ({ id }: Fact) => variable(`facts.${id}`);
const answerPath = ({ id }: Fact) => variable(`answers.${id}`);
const isIn = (members: readonly (string | boolean)[]): Logic => ({ in: [variable(''), [...members]] });

const writer: KleeneWriter<Logic> = {
  all: and,
  any: or,
  not,
  passes: (fact, test) => and([{ '!==': [factPath(fact), null] }, passes(factPath(fact), fact, test)]),
  notStated: (fact) => ({ '===': [factPath(fact), null] }),
  answerIsOneOf: (fact, members) => (members.length === 0 ? false : { all: [answerPath(fact), isIn(members)] }),
  answerMayBe: (fact, members) => (members.length === 0 ? false : { some: [answerPath(fact), isIn(members)] }),
};

function passes(value: Logic, fact: Fact, test: Test): Logic {
  if (test.kind === 'compare') {
    const bound = fact.type === 'date' ? calendarDay(test.value) : boundOf(test.value, fact);
    return { [operators[test.op]]: [value, bound] };
  }
  if (fact.type !== 'set') {
    const one = or(test.members.map((member): Logic => ({ '===': [value, member] })));
    return test.kind === 'none-of' ? not(one) : one;
  }
  switch (test.kind) {
    case 'all-of':
      return and(test.members.map((member): Logic => ({ in: [member, value] })));
    case 'none-of':
      return { none: [value, isIn(test.members)] };
    default:
      return { some: [value, isIn(test.members)] };
  }
}

const operators = { 'at-least': '>=', 'at-most': '<=', above: '>', below: '<' } as const;
