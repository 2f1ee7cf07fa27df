import type { Condition, Decision, Fact, Rule, Rulebook, Test } from '../../src/link/rulebook.js';
import { rulebookOf } from '../decide/random-rulebook.js';

const place = { file: 'made.yaml', line: 1, column: 1 };
const outcomes = ['free', 'care', 'ask', 'stop'];

/** Numbers from 0 to below 1, the same ones for the same seed (mulberry32). */
function numbers(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state);
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed;
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4_294_967_296;
  };
}

class Maker {
  private readonly next: () => number;

  constructor(seed: number) {
    this.next = numbers(seed);
  }

  below(count: number): number {
    return Math.floor(this.next() * count);
  }

  some<T>(list: readonly T[], count: number): T[] {
    const left = [...list];
    return Array.from({ length: Math.min(count, left.length) }, () => left.splice(this.below(left.length), 1)).flat();
  }

  one<T>(list: readonly T[]): T {
    const found = list[this.below(list.length)];
    if (found === undefined) throw new RangeError('nothing to choose from');
    return found;
  }

  fact(id: string, kind: number): Fact {
    const base = { id, label: id, members: [], statedBy: 'person' as const, question: `${id}?` };
    const named = (count: number) => Array.from({ length: count }, (_, index) => `m${index}`);
    if (kind % 5 === 0) return { ...base, type: 'boolean' };
    if (kind % 5 === 1 || kind % 5 === 3) return { ...base, type: 'enum', members: named(6) };
    if (kind % 5 === 2) return { ...base, type: 'quantity', unit: 'mm' };
    return { ...base, type: 'set', members: named(5) };
  }

  test({ id, type, members }: Fact): Condition {
    return { kind: 'test', fact: id, test: this.testOf(type, members) };
  }

  private testOf(type: Fact['type'], members: readonly string[]): Test {
    if (type === 'boolean') return { kind: 'one-of', members: [this.below(2) === 0] };
    if (type === 'enum' || type === 'answer') return { kind: 'one-of', members: this.some(members, 1 + this.below(2)) };
    if (type === 'set')
      return { kind: this.one(['any-of', 'all-of', 'none-of']), members: this.some(members, 1 + this.below(2)) };
    const value = 1 + this.below(20);
    return { kind: 'compare', op: this.one(['at-least', 'at-most', 'above', 'below']), value, shown: String(value) };
  }

  /** All of two to four tests; one in four of them a choice of two, one in eight a negation. */
  condition(facts: readonly Fact[], tests = 2 + this.below(3)): Condition {
    const of = this.some(facts, tests).map((fact): Condition => {
      const shape = this.below(8);
      if (shape < 2) return { kind: 'any', of: [this.test(fact), this.test(this.one(facts))] };
      return shape === 2 ? { kind: 'not', of: this.test(fact) } : this.test(fact);
    });
    return { kind: 'all', of };
  }

  rule(decision: string, index: number, when: Condition): Rule {
    return {
      id: `${decision}/r${index}`,
      name: `r${index}`,
      when,
      outcome: this.one(outcomes),
      addsOnly: false,
      because: 'it is so',
      cautions: [],
      source: { id: 'common-practice' },
      examples: [],
      layer: 'base',
      place,
    };
  }
}

function verdict(id: string, rules: Rule[]): Decision {
  return {
    kind: 'verdict',
    id,
    title: id,
    stage: 'washing',
    order: 50,
    question: `${id}?`,
    outcomes,
    say: Object.fromEntries(outcomes.map((each) => [each, each])),
    otherwise: 'ask',
    rules,
    gaps: [],
    retired: [],
    place,
  };
}

function made(decisions: readonly Decision[], facts: readonly Fact[]): Rulebook {
  return { ...rulebookOf(decisions), facts: new Map(facts.map((fact) => [fact.id, fact])) };
}

/** One decision of general rules. */
export function wide(rules: number, facts: number, seed = 1): Rulebook {
  const maker = new Maker(seed);
  const all = Array.from({ length: facts }, (_, index) => maker.fact(`f${index}`, index));
  return made(
    [
      verdict(
        'd0',
        Array.from({ length: rules }, (_, index) => maker.rule('d0', index, maker.condition(all))),
      ),
    ],
    all,
  );
}

/** Decisions of twenty rules each, on `facts` of three times as many; every fifth looks at the answer of the one before it. */
export function many(rules: number, facts: number, seed = 2): Rulebook {
  const maker = new Maker(seed);
  const pool = Array.from({ length: 3 * facts }, (_, index) => maker.fact(`f${index}`, index));
  const answers: Fact[] = [];
  const decisions = Array.from({ length: Math.ceil(rules / 20) }, (_, index) => {
    const id = `d${index}`;
    const own = maker.some(pool, facts);
    const before = index % 5 === 4 ? `d${index - 1}` : undefined;
    const answer = before && {
      ...maker.fact(`${before}-answer`, 0),
      type: 'answer' as const,
      members: outcomes,
      decision: before,
    };
    if (answer) answers.push(answer);
    const from = answer ? [...own.slice(1), answer] : own;
    return verdict(
      id,
      Array.from({ length: Math.min(20, rules) }, (_, at) => maker.rule(id, at, maker.condition(from))),
    );
  });
  return made(decisions, [...pool, ...answers]);
}

/** One decision on an item out of a catalogue of `rules / 8`: 95 % of the rules name one to three items. */
export function keyed(rules: number, facts: number, seed = 3): Rulebook {
  const maker = new Maker(seed);
  const others = Array.from({ length: facts - 1 }, (_, index) => maker.fact(`f${index}`, index));
  const items = Array.from({ length: Math.max(2, Math.round(rules / 8)) }, (_, index) => `i${index}`);
  const item: Fact = { ...maker.fact('item', 1), members: items };
  const ruleOn = (_: unknown, index: number): Rule => {
    const rest = maker.condition(others, maker.below(3));
    const named: Condition = {
      kind: 'test',
      fact: 'item',
      test: { kind: 'one-of', members: maker.some(items, 1 + maker.below(3)) },
    };
    return maker.rule('d0', index, maker.below(20) === 0 ? maker.condition(others) : { kind: 'all', of: [named, rest] });
  };
  return made([verdict('d0', Array.from({ length: rules }, ruleOn))], [item, ...others]);
}
