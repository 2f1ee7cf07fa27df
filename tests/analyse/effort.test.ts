import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { impactOf } from '../../src/analyse/impact.js';
import { analyse } from '../../src/analyse/questions.js';
import { looserIn } from '../../src/analyse/stricter.js';
import type { Rulebook } from '../../src/link/rulebook.js';
import { someChange, variedRulebook } from './changed-rulebook.js';
import { replayGaps, replayImpact, replayLooser } from './replay.js';

const efforts = [0, 1, 2, 5].map((conflicts) => ({ conflicts, regions: 40 }));

/** Pairs of rulebooks, alike but for one change. */
const pairs: [Rulebook, Rulebook][] = fc
  .sample(fc.tuple(variedRulebook, someChange), { seed: 20261204, numRuns: 60 })
  .map(([before, change]) => [before, change.of(before)]);

describe('a search that is given up early', () => {
  it('says of gaps and rules what a long one says, or that it is not decided', () => {
    let undecided = 0;
    for (const [rulebook] of pairs)
      for (const effort of efforts)
        for (const [index, full] of analyse(rulebook).entries()) {
          const short = analyse(rulebook, effort)[index];
          if (short === undefined) throw new Error('a decision is gone');
          undecided += short.undecided.length;
          replayGaps(rulebook, short);
          const isOpen = (what: string) => short.undecided.includes(what);
          if (!isOpen('gaps')) expect(short.gaps.length > 0).toBe(full.gaps.length > 0);
          for (const { id } of rulebook.decisions.get(full.decision)?.rules ?? []) {
            if (!isOpen(`whether \`${id}\` is ever true`)) expect(short.neverTrue.includes(id)).toBe(full.neverTrue.includes(id));
            else expect(short.neverTrue).not.toContain(id);
            // Of a rule that is never true it holds too that it never gives the outcome.
            if (![...full.overruled, ...full.neverTrue].includes(id)) expect(short.overruled).not.toContain(id);
          }
        }
    expect(undecided).toBeGreaterThan(1000);
  });

  it('says of strictness and of changes what a long one says, or that it is not decided', () => {
    let [decided, undecided] = [0, 0];
    for (const [before, after] of pairs)
      for (const effort of efforts) {
        const full = impactOf(before, after).decisions;
        for (const [index, impact] of impactOf(before, after, effort).decisions.entries()) {
          replayImpact(before, after, impact);
          if (impact.verdict === 'not decided') undecided += 1;
          else {
            decided += 1;
            expect(impact.verdict === 'same').toBe(full[index]?.verdict === 'same');
          }
          const looser = looserIn(impact.decision, before, after, effort);
          if (looser === 'not decided') undecided += 1;
          else {
            decided += 1;
            expect(looser !== undefined).toBe(looserIn(impact.decision, before, after) !== undefined);
            if (looser !== undefined) replayLooser(before, after, impact.decision, looser);
          }
        }
      }
    expect(undecided).toBeGreaterThan(100);
    expect(decided).toBeGreaterThan(100);
  });
});
