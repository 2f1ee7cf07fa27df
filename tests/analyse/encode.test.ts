import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { Encoder, testsOfDecision } from '../../src/analyse/encode.js';
import { assumptionsOf, spaceOf } from '../../src/analyse/space.js';
import { decide } from '../../src/decide/decide.js';
import type { Rulebook, Situation } from '../../src/link/rulebook.js';
import { completeSituation, randomRulebook } from '../decide/random-rulebook.js';

/** Situations with facts left out, and sometimes an answer that the caller states. */
const someSituation: fc.Arbitrary<Situation> = fc
  .tuple(
    completeSituation,
    fc.uniqueArray(fc.constantFrom<string>('hollow', 'kind', 'materials', 'width', 'uses')),
    fc.option(fc.constantFrom('open', 'ask', 'shut')),
  )
  .map(([whole, left, told]) => ({
    ...Object.fromEntries(Object.entries(whole).filter(([fact]) => !left.includes(fact))),
    ...(told !== null && { route: told }),
  }));

describe('decisions as formulas', () => {
  it('answer as `decide` does, in every situation, with what the clinic states', () => {
    fc.assert(
      fc.property(
        randomRulebook,
        fc.array(someSituation, { minLength: 20, maxLength: 20 }),
        someSituation,
        (random, situations, facts) => {
          const rulebook: Rulebook = { ...random, clinic: { ...random.clinic, facts } };
          for (const id of rulebook.decisions.keys()) {
            const space = spaceOf(testsOfDecision(rulebook, id), [rulebook.facts]);
            const encoded = new Encoder(space, rulebook).decision(id);
            const { solver } = space.circuit;
            for (const situation of situations) {
              expect(solver.solve(assumptionsOf(situation, space))).toBe(true);
              const answer = decide(rulebook, id, situation);
              const told = [...encoded.possible].flatMap(([each, literal]) => (solver.isTrue(literal) ? [each] : []));
              expect(told.sort()).toEqual([...answer.possible].sort());
              expect([...encoded.outcome].flatMap(([each, literal]) => (solver.isTrue(literal) ? [each] : []))).toEqual([
                answer.outcome,
              ]);
            }
          }
        },
      ),
      { numRuns: 300 },
    );
  });
});
