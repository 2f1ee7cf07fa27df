import type { Condition, Fact, FactValue, Test } from '../link/rulebook.js';

/** Strong Kleene logic: `undefined` is unknown. */
export type Truth = boolean | undefined;

/** What a condition is judged by. */
export interface Given {
  facts: ReadonlyMap<string, Fact>;
  /** The value of a fact, or `undefined` when nobody has stated it. */
  valueOf(fact: string): FactValue | undefined;
  /** The outcomes that an answer fact can still have. */
  possibleAnswers(fact: Fact): readonly string[];
}

/** Whether a condition is true, false or unknown. Learning a fact never turns true into false or false into true. */
export function truthOf(condition: Condition, given: Given): Truth {
  switch (condition.kind) {
    case 'all':
      return all(condition.of.map((each) => truthOf(each, given)));
    case 'any':
      return not(all(condition.of.map((each) => not(truthOf(each, given)))));
    case 'not':
      return not(truthOf(condition.of, given));
    case 'test':
      return truthOfTest(condition.fact, condition.test, given);
  }
}

function all(truths: readonly Truth[]): Truth {
  if (truths.includes(false)) return false;
  return truths.includes(undefined) ? undefined : true;
}

function not(truth: Truth): Truth {
  return truth === undefined ? undefined : !truth;
}

function truthOfTest(id: string, test: Test, given: Given): Truth {
  const fact = given.facts.get(id);
  if (fact === undefined) throw new RangeError(`unknown fact ${id}`);
  const meaningful = fact.onlyWhen === undefined ? true : truthOf(fact.onlyWhen, given);
  if (meaningful === false) return false;
  return all([meaningful, fact.type === 'answer' ? answerPasses(fact, test, given) : passes(given.valueOf(id), test)]);
}

function answerPasses(fact: Fact, test: Test, given: Given): Truth {
  const [first, ...others] = given.possibleAnswers(fact).map((outcome) => passes(outcome, test));
  return others.every((each) => each === first) ? first : undefined;
}

/** Whether a value passes a test; unknown where there is none. */
export function passes(value: FactValue | undefined, test: Test): Truth {
  if (value === undefined) return undefined;
  switch (test.kind) {
    case 'one-of':
      return test.members.some((member) => member === value);
    case 'any-of':
      return test.members.some((member) => has(value, member));
    case 'all-of':
      return test.members.every((member) => has(value, member));
    case 'none-of':
      return !test.members.some((member) => has(value, member));
    case 'compare':
      return compares(Number(value), test.op, test.value);
  }
}

function has(value: FactValue, member: string): boolean {
  return Array.isArray(value) ? value.includes(member) : value === member;
}

function compares(value: number, op: 'at-least' | 'at-most' | 'above' | 'below', bound: number): boolean {
  switch (op) {
    case 'at-least':
      return value >= bound;
    case 'at-most':
      return value <= bound;
    case 'above':
      return value > bound;
    case 'below':
      return value < bound;
  }
}
