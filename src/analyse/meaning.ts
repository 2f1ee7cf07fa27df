import { type Answering, programsOf } from '../decide/decide.js';
import type { Condition, Decision } from '../link/rulebook.js';
import { testsOf } from './pieces.js';

/**
 * All that the answers of a decision depend on, to be compared as text: its rules and those of the decisions it asks, the facts they
 * read, what the clinic states of these, and of a choice the programs. Words and sources are left out.
 */
export function meaningOf(id: string, rulebook: Answering): unknown {
  const asked = new Set([id]);
  const read = new Set<string>();
  const look = (conditions: readonly Condition[]): void => {
    for (const { fact } of testsOf(conditions, rulebook.facts)) {
      read.add(fact);
      const next = rulebook.facts.get(fact)?.decision;
      if (next !== undefined) asked.add(next);
    }
  };
  for (const each of asked) look(rulebook.decisions.get(each)?.rules.map(({ when }) => when) ?? []);
  const decision = rulebook.decisions.get(id);
  look(decision?.rules.flatMap(({ needs }) => needs ?? []) ?? []);
  return [
    [...asked].map((each) => rulesOf(rulebook.decisions.get(each))),
    [...read].map((fact) => {
      const { type, members, decision: by, unit, minimum, maximum, onlyWhen } = rulebook.facts.get(fact) ?? {};
      return [fact, type, members, by, unit, minimum, maximum, onlyWhen, rulebook.clinic.facts[fact]];
    }),
    decision?.kind === 'choice' ? programsOf(decision, rulebook).map(({ id: program, facts }) => [program, facts]) : [],
  ];
}

function rulesOf(decision: Decision | undefined): unknown {
  if (decision === undefined) return undefined;
  const head = decision.kind === 'verdict' ? [decision.outcomes, decision.otherwise] : [decision.from, decision.prefer];
  return [
    decision.id,
    head,
    decision.rules.map(({ name, when, outcome, needs, addsOnly }) => [name, when, outcome, needs, addsOnly]),
  ];
}
