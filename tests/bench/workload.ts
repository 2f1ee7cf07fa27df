import type { Condition, Fact, Rule, Rulebook, Verdict } from '../../src/link/rulebook.js';
import { inBaseUnit } from '../../src/measure/quantity.js';
import { rulebookOf } from '../decide/random-rulebook.js';
import { seeded } from '../emit/random-situation.js';

/** Dense: every rule is general. Keyed: 95 % of the rules name 1 to 3 items of a catalogue that grows with them. */
export type Kind = 'dense' | 'keyed';

/** A situation with some facts missing as absent keys. */
export type Facts = Record<string, string | boolean | number | string[]>;

export interface Workload {
  rulebook: Rulebook;
  situations: Facts[];
}

const outcomes = ['allow', 'check', 'hold', 'refuse'];
const place = { file: 'bench', line: 1, column: 1 };

/** 8 decisions over 25 facts: 8 enums, 7 booleans, 8 numbers and 2 sets; 4.1 tests a rule on average. */
export function workload(kind: Kind, ruleCount: number, situationCount: number, missing: number, seed = 1): Workload {
  const random = seeded(seed);
  const below = (end: number) => Math.floor(random() * end);
  const facts = factsOf(kind, ruleCount);
  const general = facts.filter(({ id }) => id !== 'item');
  const some = (members: readonly string[], least: number, most: number) => {
    const picked = new Set<string>();
    const count = least + below(most - least + 1);
    while (picked.size < count) picked.add(members[below(members.length)] ?? '');
    return [...picked];
  };
  const testOf = (fact: Fact): Condition => {
    switch (fact.type) {
      case 'boolean':
        return { kind: 'test', fact: fact.id, test: { kind: 'one-of', members: [random() < 0.5] } };
      case 'enum':
        return { kind: 'test', fact: fact.id, test: { kind: 'one-of', members: some(fact.members, 1, 3) } };
      case 'set':
        return { kind: 'test', fact: fact.id, test: { kind: 'any-of', members: some(fact.members, 1, 3) } };
      default: {
        const step = fact.id === 'n7' ? 0.5 : 1;
        const value = step * (1 + below(19));
        const test = (op: 'at-least' | 'below', bound: number): Condition => ({
          kind: 'test',
          fact: fact.id,
          test: { kind: 'compare', op, value: inBase(fact, bound), shown: String(bound) },
        });
        if (random() < 0.4) return test('at-least', value);
        if (random() < 0.7) return test('below', value);
        return { kind: 'all', of: [test('at-least', value), test('below', value + 6 * step)] };
      }
    }
  };
  const pick = (): Condition => testOf(general[below(general.length)] ?? general[0] ?? { ...blank, id: '', type: 'boolean' });
  const partOf = (): Condition => {
    const chance = random();
    if (chance < 0.72) return pick();
    return chance < 0.9 ? { kind: 'any', of: [pick(), pick()] } : { kind: 'not', of: pick() };
  };
  const item = facts.find(({ id }) => id === 'item');
  const perDecision = ruleCount / 8;
  const decisions = Array.from({ length: 8 }, (_, d): Verdict => {
    const rules = Array.from({ length: perDecision }, (_, r): Rule => {
      const isKeyed = item !== undefined && random() < 0.95;
      const key: Condition[] = isKeyed
        ? [{ kind: 'test', fact: 'item', test: { kind: 'one-of', members: some(item.members, 1, 3) } }]
        : [];
      // Where there is a catalogue, the rules that name no item of it are few and narrow.
      const length = isKeyed ? 2 + below(2) : item === undefined ? 3 + below(2) : 5 + below(2);
      const parts = Array.from({ length }, partOf);
      return {
        id: `d${d}/r${r}`,
        name: `r${r}`,
        when: { kind: 'all', of: [...key, ...parts] },
        outcome: outcomes[below(4)] ?? 'allow',
        addsOnly: false,
        because: `Because of what rule ${r} says.`,
        cautions: [],
        source: { id: 'common-practice' },
        examples: [],
        layer: 'base',
        place,
      };
    });
    return {
      kind: 'verdict',
      id: `d${d}`,
      title: `d${d}`,
      stage: 'bench',
      order: d,
      question: `d${d}?`,
      outcomes,
      say: {},
      otherwise: 'allow',
      rules,
      gaps: [],
      retired: [],
      place,
    };
  });
  const rulebook = { ...rulebookOf(decisions), facts: new Map(facts.map((fact) => [fact.id, fact])) };
  const situations = Array.from({ length: situationCount }, () => {
    const situation: Facts = {};
    for (const fact of facts) {
      if (random() < missing) continue;
      switch (fact.type) {
        case 'boolean':
          situation[fact.id] = random() < 0.5;
          break;
        case 'enum':
          situation[fact.id] = fact.members[below(fact.members.length)] ?? '';
          break;
        case 'set':
          situation[fact.id] = fact.members.filter(() => random() < 0.3);
          break;
        default:
          situation[fact.id] = fact.id === 'n7' ? below(21) / 2 : below(21);
      }
    }
    // As they come in: parsed from JSON.
    return JSON.parse(JSON.stringify(situation)) as Facts;
  });
  return { rulebook, situations };
}

function inBase({ unit }: Fact, value: number): number {
  return unit === undefined ? value : inBaseUnit({ value, unit });
}

const blank: Omit<Fact, 'id' | 'type'> = { label: '', members: [], statedBy: 'person', question: '' };

function factsOf(kind: Kind, ruleCount: number): Fact[] {
  const members = (id: string, count: number) => Array.from({ length: count }, (_, index) => `${id}-${index}`);
  const units = ['mm', 'min', 'Cel', 'kPa'];
  return [
    ...Array.from(
      { length: 8 },
      (_, index): Fact => ({ ...blank, id: `e${index}`, type: 'enum', members: members(`e${index}`, 4 + ((index * 5) % 7)) }),
    ),
    ...Array.from({ length: 7 }, (_, index): Fact => ({ ...blank, id: `b${index}`, type: 'boolean' })),
    ...Array.from(
      { length: 8 },
      (_, index): Fact =>
        index < 4
          ? { ...blank, id: `n${index}`, type: 'count' }
          : { ...blank, id: `n${index}`, type: 'quantity', unit: units[index - 4] ?? 'mm' },
    ),
    { ...blank, id: 's0', type: 'set', members: members('s0', 10) },
    { ...blank, id: 's1', type: 'set', members: members('s1', 8) },
    ...(kind === 'keyed'
      ? [{ ...blank, id: 'item', type: 'enum' as const, members: members('item', Math.max(15, ruleCount / 8)) }]
      : []),
  ];
}
