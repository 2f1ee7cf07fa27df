import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { Encoder, testsOfDecision } from '../../src/analyse/encode.js';
import { regionsOf } from '../../src/analyse/regions.js';
import { shareOf } from '../../src/analyse/share.js';
import { assumptionsOf, literalsOf, type Space, situationIn, spaceOf } from '../../src/analyse/space.js';
import { decide } from '../../src/decide/decide.js';
import type { Situation } from '../../src/link/rulebook.js';
import { completeSituation, randomRulebook } from '../decide/random-rulebook.js';

const effort = { conflicts: 20_000, regions: 1000 };

/** Every situation of the random facts in which all is stated, a number once for each range that the rules cut it into. */
function everySituation({ dimensions }: Space): Situation[] {
  const numbers = (id: string) => {
    const pieces = dimensions.get(id)?.pieces;
    return pieces?.kind === 'spans' ? pieces.pieces.map(({ example }) => example) : [1];
  };
  const sets = [0, 1, 2, 3, 4, 5, 6, 7].map((set) => ['steel', 'brass', 'glass'].filter((_, index) => (set >> index) & 1));
  return [true, false].flatMap((hollow) =>
    ['a', 'b', 'c'].flatMap((kind) =>
      sets.flatMap((materials) =>
        numbers('width').flatMap((width) => numbers('uses').map((uses) => ({ hollow, kind, materials, width, uses }))),
      ),
    ),
  );
}

describe('the regions of an outcome', () => {
  it('are together exactly the situations that have it, and each lies wholly within', () => {
    fc.assert(
      fc.property(
        randomRulebook,
        fc.constantFrom('route', 'later'),
        fc.constantFrom('open', 'ask', 'shut'),
        fc.array(completeSituation, { minLength: 15, maxLength: 15 }),
        (rulebook, id, outcome, situations) => {
          const space = spaceOf(testsOfDecision(rulebook, id), [rulebook.facts]);
          const formula = new Encoder(space, rulebook).decision(id).outcome.get(outcome) ?? 0;
          const { boxes, complete } = regionsOf(space, formula, effort);
          expect(complete).toBe(true);
          const { solver } = space.circuit;
          for (const box of boxes) {
            expect(solver.solve([-formula, ...literalsOf(box)])).toBe(false);
            expect(decide(rulebook, id, situationIn(box, space)).outcome).toBe(outcome);
          }
          for (const situation of situations) {
            const inside = boxes.some((box) => solver.solve([...assumptionsOf(situation, space), ...literalsOf(box)]) === true);
            expect(inside).toBe(decide(rulebook, id, situation).outcome === outcome);
          }
        },
      ),
      { numRuns: 120 },
    );
  });

  it('are as large as can be: no literal can be left out', () => {
    fc.assert(
      fc.property(randomRulebook, fc.constantFrom('open', 'ask', 'shut'), (rulebook, outcome) => {
        const space = spaceOf(testsOfDecision(rulebook, 'route'), [rulebook.facts]);
        const formula = new Encoder(space, rulebook).decision('route').outcome.get(outcome) ?? 0;
        for (const box of regionsOf(space, formula, effort).boxes)
          for (const left of literalsOf(box))
            expect(space.circuit.solver.solve([-formula, ...literalsOf(box).filter((each) => each !== left)])).toBe(true);
      }),
      { numRuns: 60 },
    );
  });
});

describe('the share of regions', () => {
  it('is what counting one by one gives, each piece of a fact once', () => {
    fc.assert(
      fc.property(randomRulebook, fc.constantFrom('open', 'ask', 'shut'), (rulebook, outcome) => {
        const space = spaceOf(testsOfDecision(rulebook, 'route'), [rulebook.facts]);
        const formula = new Encoder(space, rulebook).decision('route').outcome.get(outcome) ?? 0;
        const share = shareOf(regionsOf(space, formula, effort).boxes, space) ?? Number.NaN;
        const every = everySituation(space);
        const having = every.filter((situation) => decide(rulebook, 'route', situation).outcome === outcome);
        expect(share).toBeCloseTo(having.length / every.length, 10);
      }),
      { numRuns: 60 },
    );
  });
});
