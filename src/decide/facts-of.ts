import type { Condition, Fact } from '../link/rulebook.js';
import { type Given, truthOf } from './truth.js';

/** The facts a condition looks at, in the order it names them, with those their `only-when` looks at. */
export function factsOf(condition: Condition, facts: ReadonlyMap<string, Fact>): string[] {
  return [...new Set(testsOf(condition).flatMap(({ fact }) => [...guardsOf(fact, facts), fact]))];
}

/** The tests that keep a condition from being true: false ones where it is false, unknown ones where it is unknown. */
export function factsAgainst(condition: Condition, given: Given): string[] {
  const truth = truthOf(condition, given);
  if (truth === true) return [];
  return [
    ...new Set(
      testsOf(condition)
        .filter((test) => truthOf(test, given) !== true)
        .map(({ fact }) => fact),
    ),
  ];
}

/** The missing facts that leave a condition open. A fact worked out by a decision stands for itself. */
export function missingFacts(condition: Condition, given: Given): string[] {
  if (truthOf(condition, given) !== undefined) return [];
  if (condition.kind === 'test') return missingForTest(condition.fact, given);
  const parts = condition.kind === 'not' ? [condition.of] : condition.of;
  return [...new Set(parts.flatMap((part) => missingFacts(part, given)))];
}

function missingForTest(id: string, given: Given): string[] {
  const guard = given.facts.get(id)?.onlyWhen;
  const missing = guard === undefined ? [] : missingFacts(guard, given);
  return given.valueOf(id) === undefined ? [...missing, id] : missing;
}

function testsOf(condition: Condition): Extract<Condition, { kind: 'test' }>[] {
  if (condition.kind === 'test') return [condition];
  return condition.kind === 'not' ? testsOf(condition.of) : condition.of.flatMap(testsOf);
}

function guardsOf(id: string, facts: ReadonlyMap<string, Fact>): string[] {
  const guard = facts.get(id)?.onlyWhen;
  return guard === undefined ? [] : factsOf(guard, facts);
}
