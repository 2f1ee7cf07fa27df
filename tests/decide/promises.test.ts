import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { decide } from '../../src/decide/decide.js';
import type { Rulebook, Situation } from '../../src/link/rulebook.js';
import { completeSituation, randomRulebook } from './random-rulebook.js';

const cases = fc.record({
  rulebook: randomRulebook,
  complete: completeSituation,
  keep: fc.array(fc.boolean(), { minLength: 5, maxLength: 5 }),
  learn: fc.array(fc.boolean(), { minLength: 5, maxLength: 5 }),
});
const runs = { numRuns: 4000, seed: 20261125 };

const part = (situation: Situation, keep: readonly boolean[]): Situation =>
  Object.fromEntries(Object.entries(situation).filter((_, index) => keep[index]));
const rank = (outcome: string) => ['open', 'ask', 'shut'].indexOf(outcome);
const acceptable = (rulebook: Rulebook, given: Situation) =>
  (decide(rulebook, 'program', given).offers ?? []).filter(({ meets }) => meets).map(({ program }) => program);

describe('a missing fact', () => {
  it('never makes a verdict more permissive than any completion, and every completion was possible', () => {
    fc.assert(
      fc.property(cases, ({ rulebook, complete, keep }) => {
        for (const id of ['route', 'later']) {
          const before = decide(rulebook, id, part(complete, keep));
          const after = decide(rulebook, id, complete);
          expect(rank(before.outcome)).toBeGreaterThanOrEqual(rank(after.outcome));
          expect(before.possible).toContain(after.outcome);
        }
      }),
      runs,
    );
  });

  it('never lets a choice accept a program that a completion refuses, nor rule out one that a completion accepts', () => {
    fc.assert(
      fc.property(cases, ({ rulebook, complete, keep }) => {
        const after = acceptable(rulebook, complete);
        for (const program of acceptable(rulebook, part(complete, keep))) expect(after).toContain(program);
        const { possible } = decide(rulebook, 'program', part(complete, keep));
        for (const program of after) expect(possible).toContain(program);
        expect(possible).toContain(decide(rulebook, 'program', complete).outcome);
      }),
      runs,
    );
  });

  it('is asked for while an answer is open, and never once it is settled', () => {
    fc.assert(
      fc.property(cases, ({ rulebook, complete, keep }) => {
        const given = part(complete, keep);
        for (const id of ['route', 'later', 'program']) {
          const { settled, needed } = decide(rulebook, id, given);
          expect(needed.length > 0).toBe(!settled);
          for (const fact of needed) expect(given).not.toHaveProperty([fact]);
        }
      }),
      runs,
    );
  });
});

describe('learning a fact', () => {
  it('never turns a settled answer into another, and never widens what is possible', () => {
    fc.assert(
      fc.property(cases, ({ rulebook, complete, keep, learn }) => {
        const less = part(complete, keep);
        const more = { ...less, ...part(complete, learn) };
        for (const id of ['route', 'later', 'program']) {
          const [before, after] = [decide(rulebook, id, less), decide(rulebook, id, more)];
          if (before.settled) {
            expect(after.settled).toBe(true);
            expect(after.outcome).toBe(before.outcome);
            expect(after.possible).toEqual(before.possible);
          }
          for (const outcome of after.possible) expect(before.possible).toContain(outcome);
        }
      }),
      runs,
    );
  });

  it('settles every answer in the end', () => {
    fc.assert(
      fc.property(cases, ({ rulebook, complete }) => {
        for (const id of ['route', 'later', 'program']) expect(decide(rulebook, id, complete).settled).toBe(true);
      }),
      runs,
    );
  });
});

describe('reasons', () => {
  it('name at least one certain rule with the outcome wherever a rule settles it', () => {
    fc.assert(
      fc.property(cases, ({ rulebook, complete }) => {
        const { outcome, reasons } = decide(rulebook, 'route', complete);
        expect(reasons.some((reason) => reason.certain && reason.outcome === outcome)).toBe(true);
      }),
      runs,
    );
  });
});
