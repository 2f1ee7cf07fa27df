import type { Condition, Decision, Fact } from './rulebook.js';

/** The decisions whose outcomes a decision looks at. */
export function decisionsBehind(decision: Decision, { facts }: { facts: ReadonlyMap<string, Fact> }): string[] {
  const ids = decision.rules.flatMap(({ when }) => factIds(when));
  return [...new Set(ids.flatMap((id) => facts.get(id)?.decision ?? []))];
}

function factIds(condition: Condition): string[] {
  if (condition.kind === 'test') return [condition.fact];
  return condition.kind === 'not' ? factIds(condition.of) : condition.of.flatMap(factIds);
}
