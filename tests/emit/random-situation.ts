import type { Fact, Rulebook } from '../../src/link/rulebook.js';
import { fromBaseUnit, inBaseUnit, leastOf } from '../../src/measure/quantity.js';

/** A small seeded generator of numbers from 0 to 1 (mulberry32). */
export function seeded(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state);
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed;
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4_294_967_296;
  };
}

/** Random situations of a rulebook, as callers write them, numbers often at a bound that a rule names. */
export function situationsOf(rulebook: Rulebook, random: () => number): (missing: number) => Record<string, unknown> {
  const bounds = boundsByFact(rulebook);
  const pick = <T>(of: readonly T[]): T | undefined => of[Math.floor(random() * of.length)];
  const valueFor = (fact: Fact): unknown => {
    switch (fact.type) {
      case 'boolean':
        return random() < 0.5;
      case 'enum':
      case 'answer':
        return pick(fact.members);
      case 'set':
        return fact.members.filter(() => random() < 0.3);
      case 'count':
        return Math.max(0, Math.round((pick(bounds.get(fact.id) ?? [3]) ?? 3) + 3 * random() - 1.5));
      case 'date':
        return '2026-05-04';
      case 'quantity': {
        const unit = fact.unit ?? '1';
        const near = fromBaseUnit(pick(bounds.get(fact.id) ?? []) ?? 0, unit).value;
        const value = random() < 0.4 ? near : near * (1 + 0.2 * (random() - 0.5)) + random();
        const least = fact.minimum === undefined ? leastOf(unit) : inBaseUnit(fact.minimum);
        const most = fact.maximum === undefined ? Number.POSITIVE_INFINITY : inBaseUnit(fact.maximum);
        const base = inBaseUnit({ value, unit });
        return base < least ? fromBaseUnit(least, unit).value : base > most ? fromBaseUnit(most, unit).value : value;
      }
    }
  };
  return (missing) =>
    Object.fromEntries([...rulebook.facts.values()].flatMap((fact) => (random() < missing ? [] : [[fact.id, valueFor(fact)]])));
}

function boundsByFact(rulebook: Rulebook): Map<string, number[]> {
  const bounds = new Map<string, number[]>();
  const text = JSON.stringify([...rulebook.decisions.values()].map(({ rules }) => rules.map(({ when }) => when)));
  JSON.parse(text, (_, each) => {
    if (each?.kind === 'test' && each.test.kind === 'compare')
      bounds.set(each.fact, [...(bounds.get(each.fact) ?? []), each.test.value]);
    return each;
  });
  return bounds;
}
