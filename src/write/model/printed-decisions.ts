import type { Decision, Rulebook } from '../../link/rulebook.js';

/** The decisions that are printed for this clinic. */
export function printedDecisions({ decisions, notHere }: Pick<Rulebook, 'decisions' | 'notHere'>): Decision[] {
  return [...decisions.values()].filter(({ id }) => !notHere.has(id));
}
