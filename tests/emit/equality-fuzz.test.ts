import fc from 'fast-check';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { testsOfDecision } from '../../src/analyse/encode.js';
import { boundOf, situationToContract, statable } from '../../src/emit/contract.js';
import type { Fact, Rulebook } from '../../src/link/rulebook.js';
import { calendarDay } from '../../src/measure/day-number.js';
import { completeSituation, randomRulebook } from '../decide/random-rulebook.js';
import { sampleRulebook } from './clinics.js';
import { expectSame } from './compare.js';
import { type Evaluator, everyEvaluator, type Stated } from './evaluators.js';

const total = 100_000;
const rulebook = sampleRulebook('piedra-alta');
const decisions = [...rulebook.decisions.keys()];
let evaluators: Evaluator[] = [];
let [refused, run] = [0, 0];

beforeAll(async () => {
  evaluators = await everyEvaluator(rulebook);
});
afterAll(() => {
  for (const each of evaluators) each.close();
});

it.each(decisions)(
  'any situation of `%s` is answered or refused alike',
  async (decision) => {
    const situations = fuzz(rulebook, decision, Math.ceil(total / decisions.length), decisions.indexOf(decision) + 1);
    run += situations.length;
    refused += await expectSame(evaluators, decision, situations);
  },
  120_000,
);

it('was about 100,000 situations, and some of them are refused', () => {
  expect(run).toBeGreaterThanOrEqual(total);
  expect(refused).toBeGreaterThan(total / 200);
  expect(refused).toBeLessThan(total / 20);
});

it('random rulebooks are answered alike', async () => {
  for (const random of fc.sample(randomRulebook, { seed: 20_261_201, numRuns: 25 })) {
    const own = await everyEvaluator(random);
    const situations = fc.sample(completeSituation, { seed: 7, numRuns: 60 }).flatMap((whole, index) => {
      const stated = situationToContract(whole, random.facts);
      const partial = Object.fromEntries(Object.entries(stated).filter((_, at) => (index >> at) & 1));
      const told = { ...partial, route: ['open', 'ask', 'shut'][index % 3] };
      return [stated, partial, told];
    });
    for (const decision of random.decisions.keys()) await expectSame(own, decision, situations);
    for (const each of own) each.close();
  }
}, 120_000);

/** Situations with facts missing, null, of no concern, unknown, at and beside every threshold, and a few with a value that cannot be. */
function fuzz(rules: Rulebook, decision: string, count: number, seed: number): Stated[] {
  const next = randomNumbers(seed);
  const pick = <T>(list: readonly T[]): T | undefined => list[Math.floor(next() * list.length)];
  const read = statable(rules, decision);
  const others = [...rules.facts.values()].filter((fact) => !read.includes(fact));
  const bounds = new Map<string, number[]>();
  for (const { fact, test } of testsOfDecision(rules, decision))
    if (test.kind === 'compare') bounds.set(fact, [...(bounds.get(fact) ?? []), test.value]);
  const value = (fact: Fact): unknown => {
    switch (fact.type) {
      case 'boolean':
        return next() < 0.5;
      case 'enum':
      case 'answer':
        return pick(fact.members);
      case 'set':
        return fact.members.filter(() => next() < 0.25);
      default: {
        const bound = pick(bounds.get(fact.id) ?? []) ?? Math.floor(next() * 100);
        const near = [0, 0, 1, -1, bound * 1e-6, -bound * 1e-6, next() * bound][Math.floor(next() * 7)] ?? 0;
        if (fact.type === 'date') return calendarDay(Math.round(bound + near));
        const number = Math.max(0, boundOf(bound + near, fact));
        const most = fact.maximum === undefined ? number : Math.min(number, fact.maximum.value);
        return fact.type === 'count' ? Math.round(most) : Number(most.toPrecision(10));
      }
    }
  };
  const wrong = (fact: Fact): unknown => {
    if (fact.type === 'set') return ['no-such-member'];
    if (fact.type === 'count') return pick([2.5, -1, 'several']);
    if (fact.type === 'quantity') return pick([1e12, 'much', ...(fact.unit === 'Cel' ? [] : [-5])]);
    return fact.type === 'date' ? pick(['2026-02-30', 'monday']) : 'no-such-word';
  };
  return Array.from({ length: count }, () => {
    const stated: Record<string, unknown> = {};
    for (const fact of read) {
      const chance = next();
      if (chance < 0.25) continue;
      stated[fact.id] = chance < 0.3 ? null : value(fact);
    }
    const other = pick(others);
    if (other !== undefined && next() < 0.3) stated[other.id] = next() < 0.5 ? value(other) : 'of no concern';
    if (next() < 0.1) stated['no.such.fact'] = 1;
    const victim = pick(read);
    if (victim !== undefined && next() < 0.015) stated[victim.id] = wrong(victim);
    return stated;
  });
}

/** Numbers from 0 to 1, the same for the same seed (mulberry32). */
function randomNumbers(seed: number): () => number {
  let state = seed * 0x9e3779b9;
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state);
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed;
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32;
  };
}
