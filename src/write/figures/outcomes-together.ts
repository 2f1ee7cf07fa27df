import { Encoder, testsOfDecision } from '../../analyse/encode.js';
import { usualEffort, whereAllIsStated } from '../../analyse/regions.js';
import { holdTo, spaceOf } from '../../analyse/space.js';
import type { Rulebook } from '../../link/rulebook.js';

/** Outcomes by decision. */
export type Outcomes = Readonly<Record<string, string>>;

/**
 * Whether some instrument gets these outcomes together, all that is asked about it being known. What cannot be settled within
 * the limit of the search counts as if it did.
 */
export function outcomesTogether(rulebook: Rulebook, decisions: readonly string[]): (outcomes: Outcomes) => boolean {
  const tests = decisions.flatMap((id) => testsOfDecision(rulebook, id));
  const space = spaceOf(tests, [rulebook.facts]);
  holdTo(Object.keys(rulebook.clinic.facts), space);
  const encoder = new Encoder(space, rulebook);
  const encoded = new Map(decisions.map((id) => [id, encoder.decision(id)]));
  const stated = whereAllIsStated(space);
  const { circuit } = space;
  return (outcomes) => {
    const literals = Object.entries(outcomes).map(
      ([decision, outcome]) => encoded.get(decision)?.outcome.get(outcome) ?? circuit.never,
    );
    return circuit.solver.solve([...stated, ...literals], usualEffort.conflicts) !== false;
  };
}
