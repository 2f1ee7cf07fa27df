import { expect } from 'vitest';
import { representativesOf } from '../../src/analyse/representatives.js';
import { situationToContract } from '../../src/emit/contract.js';
import type { Rulebook } from '../../src/link/rulebook.js';
import type { Evaluator, Stated } from './evaluators.js';

/** Holds evaluators to the first one, on the same situations of one decision. Returns how many it refused. */
export async function expectSame(
  [first, ...others]: readonly Evaluator[],
  decision: string,
  situations: readonly Stated[],
): Promise<number> {
  if (first === undefined) throw new Error('no evaluator');
  const wanted = await first.answer(decision, situations);
  for (const other of others) {
    const given = await other.answer(decision, situations);
    const wrong = situations.findIndex((_, index) => JSON.stringify(given[index]) !== JSON.stringify(wanted[index]));
    const at =
      wrong === -1 ? undefined : { situation: situations[wrong], [first.name]: wanted[wrong], [other.name]: given[wrong] };
    expect(at, `${other.name} on \`${decision}\``).toBe(undefined);
    expect(given.length).toBe(situations.length);
  }
  return wanted.filter((each) => each === 'refused').length;
}

/** Every situation that stands for the others of a decision, as callers write it. */
export function everyCell(rulebook: Rulebook, decision: string): Stated[] {
  const { situations, extent } = representativesOf(rulebook, decision);
  expect(extent, decision).not.toBe('some');
  return situations.map((each) => situationToContract(each, rulebook.facts));
}
