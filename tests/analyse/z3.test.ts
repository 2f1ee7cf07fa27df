import fc from 'fast-check';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { impactOf } from '../../src/analyse/impact.js';
import { analyseDecision } from '../../src/analyse/questions.js';
import { looserIn } from '../../src/analyse/stricter.js';
import type { Condition, Rulebook } from '../../src/link/rulebook.js';
import { facts, rulebookOf } from '../decide/random-rulebook.js';
import { type Change, mapCondition, mapDecision, someChange, variedRulebook } from './changed-rulebook.js';
import { replayGaps, replayImpact, replayLooser } from './replay.js';
import { shippedRulebooks } from './shipped.js';
import { startZ3, type Z3 } from './z3.js';
import { asked, compare, lookAt } from './z3-questions.js';

const place = { file: 'x', line: 1, column: 1 };

let z3: Z3;
beforeAll(async () => {
  z3 = await startZ3();
});
afterAll(async () => {
  await z3.end();
});

/** One decision by itself: both say the same, and what is shown is so. */
async function checkDecision(rulebook: Rulebook, id: string, about = ''): Promise<void> {
  const decision = rulebook.decisions.get(id);
  if (decision === undefined) throw new Error(`no decision ${id}`);
  const ours = analyseDecision(decision, rulebook);
  const { hasGap, neverTrue, overruled } = await lookAt(z3, rulebook, decision);
  expect(ours.undecided).toEqual([]);
  expect({ hasGap: ours.gaps.length > 0, neverTrue: ours.neverTrue, overruled: ours.overruled }, `${about} ${id}`).toEqual({
    hasGap,
    neverTrue,
    overruled,
  });
  replayGaps(rulebook, ours);
}

/** Two versions of a rulebook: both say the same of each decision, and what is shown is so. */
async function checkPair(before: Rulebook, after: Rulebook, about: string): Promise<{ changed: string[]; looser: string[] }> {
  const [changed, loosened]: [string[], string[]] = [[], []];
  for (const impact of impactOf(before, after).decisions) {
    const id = impact.decision;
    if (!before.decisions.has(id) || !after.decisions.has(id)) continue;
    const { isLooser, isChanged } = await compare(z3, before, after, id);
    expect(['same', 'changed', 'many'], `${about} ${id}`).toContain(impact.verdict);
    expect(impact.verdict !== 'same', `${about} ${id}: changed`).toBe(isChanged);
    if (isChanged) changed.push(id);
    replayImpact(before, after, impact);
    const looser = looserIn(id, before, after);
    expect(looser !== undefined, `${about} ${id}: looser`).toBe(isLooser);
    if (looser === undefined || looser === 'not decided') continue;
    loosened.push(id);
    replayLooser(before, after, id, looser);
  }
  return { changed, looser: loosened };
}

/** The same rulebook with every comparison with one limit moved. */
function withMovedLimit(rulebook: Rulebook, limit: string, factor: number): Rulebook {
  const moved = [...rulebook.decisions.keys()].reduce(
    (each, id) =>
      mapDecision(each, id, (rules) =>
        rules.map((rule) => ({
          ...rule,
          when: mapCondition(rule.when, (part) =>
            part.kind === 'test' && part.test.kind === 'compare' && part.test.limit === limit
              ? { ...part, test: { ...part.test, value: part.test.value * factor } }
              : part,
          ),
        })),
      ),
    rulebook,
  );
  return moved;
}

describe('the analysis says what z3 says', () => {
  it('of gaps and rules without effect in random rulebooks', async () => {
    for (const rulebook of fc.sample(variedRulebook, { seed: 20261201, numRuns: 120 }))
      for (const id of rulebook.decisions.keys()) await checkDecision(rulebook, id, JSON.stringify(rulebook.clinic.facts));
    expect(asked.yes).toBeGreaterThan(300);
    expect(asked.no).toBeGreaterThan(300);
  });

  it('of strictness and change in random rulebooks, small changes and such as mean the same', async () => {
    const kept: Change['what'][] = [];
    const made: Change['what'][] = [];
    const pairs = fc.sample(fc.tuple(variedRulebook, someChange, fc.boolean()), { seed: 20261202, numRuns: 250 });
    for (const [rulebook, change, anyClinic] of pairs) {
      const before = anyClinic ? { ...rulebook, clinic: { ...rulebook.clinic, facts: {} } } : rulebook;
      const { changed } = await checkPair(before, change.of(before), change.what);
      if (change.keepsMeaning) expect(changed).toEqual([]);
      (changed.length > 0 ? made : kept).push(change.what);
    }
    expect(new Set(kept).size).toBeGreaterThan(6);
    expect(new Set(made).size).toBeGreaterThan(4);
  });

  it('of unlike rulebooks', async () => {
    const pairs = fc.sample(fc.tuple(variedRulebook, variedRulebook), { seed: 20261203, numRuns: 250 });
    // What a fact measures stays what it is; what it lies between may differ.
    const kinds = ({ facts }: Rulebook) =>
      JSON.stringify([...facts.values()].map(({ type, unit, onlyWhen }) => [type, unit, onlyWhen]));
    const alike = pairs.filter(([before, after]) => kinds(before) === kinds(after));
    expect(alike.length).toBeGreaterThan(30);
    for (const [before, after] of alike) await checkPair(before, after, 'unlike');
  });
});

describe('where two rulebooks bound a fact apart', () => {
  /** A rulebook in which a width lies between two numbers, and one up to a third is `shut`. */
  const bounded = (least: number, most: number, shutUpTo: number): Rulebook => {
    const when: Condition = {
      kind: 'test',
      fact: 'width',
      test: { kind: 'compare', op: 'at-most', value: shutUpTo, shown: `${shutUpTo} mm` },
    };
    const width = facts.get('width');
    if (width === undefined) throw new Error('no width');
    const { onlyWhen: _, ...always } = width;
    const minimum = { value: least, unit: 'mm' };
    const maximum = { value: most, unit: 'mm' };
    const rulebook = rulebookOf([
      {
        kind: 'verdict',
        id: 'route',
        title: '',
        stage: '',
        order: 1,
        question: '',
        outcomes: ['open', 'shut'],
        say: {},
        otherwise: 'open',
        rules: [
          {
            id: 'route/narrow',
            name: 'narrow',
            when,
            outcome: 'shut',
            addsOnly: false,
            because: '',
            cautions: [],
            source: { id: 'x' },
            examples: [],
            layer: 'base',
            place,
          },
        ],
        gaps: [],
        retired: [],
        place,
      },
    ]);
    return { ...rulebook, facts: new Map(facts).set('width', { ...always, minimum, maximum }) };
  };

  it('nothing changes at a width that is in neither', async () => {
    const { changed, looser } = await checkPair(bounded(0, 2, 4), bounded(5, 8, 2), 'apart');
    expect({ changed, looser }).toEqual({ changed: [], looser: [] });
  });

  it('it does at one that is in both', async () => {
    const { changed, looser } = await checkPair(bounded(0, 6, 4), bounded(1, 8, 2), 'overlapping');
    expect({ changed, looser }).toEqual({ changed: ['route'], looser: ['route'] });
  });
});

describe('of the shipped rules, the analysis says what z3 says', () => {
  const { base, regions, clinics } = shippedRulebooks();

  it('of each decision of the packs and of the sample clinics', async () => {
    const [first] = regions.values();
    for (const [name, rulebook] of [...regions, ...clinics])
      for (const [id, decision] of rulebook.decisions) {
        // Most decisions of a region are those of the base pack.
        const isSeen = rulebook !== first && regions.has(name) && sameRules(first?.decisions.get(id), decision);
        if (!isSeen) await checkDecision(rulebook, id, name);
      }
  });

  it('of the regions beside the base pack', async () => {
    for (const [name, region] of regions) {
      const { looser } = await checkPair(base, region, name);
      expect(looser).toEqual([]);
    }
  });

  it('of a limit moved either way', async () => {
    const limits = [...base.limits.keys()].filter((limit) => JSON.stringify([...base.decisions.values()]).includes(`"${limit}"`));
    const moved = new Set<string>();
    for (const limit of limits)
      for (const factor of [0.95, 1.05]) {
        const { changed } = await checkPair(base, withMovedLimit(base, limit, factor), `${limit} ${factor}`);
        if (changed.length > 0) moved.add(limit);
      }
    expect(moved.size).toBeGreaterThan(0);
  });
});

function sameRules(a: unknown, b: unknown): boolean {
  return JSON.stringify(a) === JSON.stringify(b);
}
