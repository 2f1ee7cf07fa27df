import fc from 'fast-check';
import type { Condition, Decision, Fact, Rule, Rulebook, Situation } from '../../src/link/rulebook.js';
import { facts as plainFacts, randomRulebook } from '../decide/random-rulebook.js';

type TestCondition = Extract<Condition, { kind: 'test' }>;

/** The condition with every part put through `change`, parts before wholes. */
export function mapCondition(condition: Condition, change: (part: Condition) => Condition): Condition {
  if (condition.kind === 'test') return change(condition);
  if (condition.kind === 'not') return change({ ...condition, of: mapCondition(condition.of, change) });
  return change({ ...condition, of: condition.of.map((each) => mapCondition(each, change)) });
}

/** The rulebook with another version of one decision. */
export function mapDecision(rulebook: Rulebook, id: string, change: (rules: Rule[]) => Rule[]): Rulebook {
  const decision = rulebook.decisions.get(id);
  if (decision === undefined) return rulebook;
  const changed: Decision = { ...decision, rules: change(decision.rules) };
  return { ...rulebook, decisions: new Map(rulebook.decisions).set(id, changed) };
}

/** Changes the part at `index` among those of a rule's condition that `fits` takes. */
function changeOne(rule: Rule, index: number, fits: (part: Condition) => boolean, change: (part: Condition) => Condition): Rule {
  let count = 0;
  mapCondition(rule.when, (part) => {
    if (fits(part)) count += 1;
    return part;
  });
  let at = -1;
  const wanted = count === 0 ? -1 : index % count;
  const when = mapCondition(rule.when, (part) => {
    if (!fits(part)) return part;
    at += 1;
    return at === wanted ? change(part) : part;
  });
  return { ...rule, when };
}

const isCompare = (part: Condition) => part.kind === 'test' && part.test.kind === 'compare';
const isWide = (part: Condition) => (part.kind === 'all' || part.kind === 'any') && part.of.length > 1;

function moveBound(part: Condition, by: number): Condition {
  if (part.kind !== 'test' || part.test.kind !== 'compare') return part;
  const { test } = part;
  if (by === 0) return { ...part, test: { ...test, op: turned[test.op] } };
  return { ...part, test: { ...test, value: test.value + by, shown: String(test.value + by) } };
}

const turned = { 'at-least': 'above', above: 'at-least', 'at-most': 'below', below: 'at-most' } as const;

function dropOne(part: Condition, index: number): Condition {
  if (part.kind !== 'all' && part.kind !== 'any') return part;
  return { ...part, of: part.of.filter((_, each) => each !== index % part.of.length) };
}

/** A condition that is true, false and unknown where the given one is: De Morgan, thresholds split in two. */
export function rewritten(condition: Condition): Condition {
  return mapCondition(condition, (part): Condition => {
    if (part.kind === 'all' || part.kind === 'any') {
      const of = [...part.of].reverse().map((each): Condition => ({ kind: 'not', of: each }));
      return { kind: 'not', of: { kind: part.kind === 'all' ? 'any' : 'all', of } };
    }
    if (part.kind !== 'test' || part.test.kind !== 'compare') return part;
    const { value, op } = part.test;
    const isUp = op === 'at-least' || op === 'above';
    const compare = (other: typeof op, at: number): TestCondition => ({
      kind: 'test',
      fact: part.fact,
      test: { kind: 'compare', op: other, value: at, shown: String(at) },
    });
    const split = value + (isUp ? 1.5 : -1.5);
    const near: Condition = { kind: 'all', of: [part, compare(isUp ? 'below' : 'above', split)] };
    return { kind: 'any', of: [near, compare(isUp ? 'at-least' : 'at-most', split)] };
  });
}

/** A change of one decision, and whether it leaves all answers as they are. */
export interface Change {
  what: string;
  keepsMeaning: boolean;
  decision: string;
  of(rulebook: Rulebook): Rulebook;
}

/** Small changes as people make them, and such as mean the same. */
export const someChange: fc.Arbitrary<Change> = fc
  .record({
    decision: fc.constantFrom('route', 'later', 'program'),
    what: fc.constantFrom('bound', 'drop', 'outcome', 'add', 'retire', 'negate', 'rewrite', 'reorder', 'repeat'),
    at: fc.nat(20),
    part: fc.nat(20),
    by: fc.constantFrom(-1, -0.5, 0, 0.25, 1),
    outcome: fc.constantFrom('open', 'ask', 'shut'),
    other: randomRulebook,
  })
  .map(({ decision, what, at, part, by, outcome, other }) => {
    const changeAt = (rules: Rule[], change: (rule: Rule) => Rule) =>
      rules.map((rule, index) => (index === at % rules.length ? change(rule) : rule));
    const changes: Record<string, (rules: Rule[]) => Rule[]> = {
      bound: (rules) => changeAt(rules, (rule) => changeOne(rule, part, isCompare, (each) => moveBound(each, by))),
      drop: (rules) => changeAt(rules, (rule) => changeOne(rule, part, isWide, (each) => dropOne(each, part))),
      outcome: (rules) =>
        changeAt(rules, (rule) => (rule.outcome === undefined ? { ...rule, addsOnly: !rule.addsOnly } : { ...rule, outcome })),
      add: (rules) => [
        ...rules,
        ...(other.decisions.get(decision)?.rules ?? [])
          .slice(0, 1)
          .map((rule) => ({ ...rule, id: `${rule.id}-new`, name: 'new' })),
      ],
      retire: (rules) => rules.filter((_, index) => index !== at % rules.length),
      negate: (rules) => changeAt(rules, (rule) => ({ ...rule, when: { kind: 'not', of: rule.when } })),
      rewrite: (rules) => rules.map((rule) => ({ ...rule, when: rewritten(rule.when) })),
      reorder: (rules) => [...rules].reverse(),
      repeat: (rules) => [...rules, ...rules.slice(0, 1).map((rule) => ({ ...rule, id: `${rule.id}-again`, name: 'again' }))],
    };
    const change = changes[what] ?? ((rules) => rules);
    return {
      what,
      decision,
      keepsMeaning: what === 'rewrite' || what === 'reorder' || what === 'repeat',
      of: (rulebook) => mapDecision(rulebook, decision, change),
    };
  });

/** Other kinds of numbers and guards than the plain random rulebook has. */
const vocabularies: Record<string, (facts: Map<string, Fact>) => Map<string, Fact>> = {
  plain: (facts) => facts,
  bounded: (facts) =>
    vary(vary(facts, 'width', { minimum: { value: 1, unit: 'mm' }, maximum: { value: 0.35, unit: 'cm' } }), 'uses', {
      type: 'quantity',
      unit: 'Cel',
    }),
  narrow: (facts) => vary(facts, 'width', { minimum: { value: 0.5, unit: 'mm' }, maximum: { value: 5, unit: 'mm' } }),
  dates: (facts) => vary(facts, 'uses', { type: 'date' }),
  guarded: (facts) =>
    vary(vary(facts, 'uses', { onlyWhen: isOneOf('kind', ['a', 'b']) }), 'materials', {
      onlyWhen: {
        kind: 'any',
        of: [
          isOneOf('kind', ['b', 'c']),
          { kind: 'test', fact: 'uses', test: { kind: 'compare', op: 'above', value: 2.5, shown: '2.5' } },
        ],
      },
    }),
  answered: (facts) => vary(facts, 'uses', { onlyWhen: isOneOf('route', ['open', 'ask']) }),
};

function vary(facts: Map<string, Fact>, id: string, more: Partial<Fact>): Map<string, Fact> {
  const fact = facts.get(id);
  return fact === undefined ? facts : new Map(facts).set(id, { ...fact, ...more });
}

function isOneOf(fact: string, members: (string | boolean)[]): TestCondition {
  return { kind: 'test', fact, test: { kind: 'one-of', members } };
}

const clinicStates: fc.Arbitrary<Situation> = fc.record(
  {
    hollow: fc.boolean(),
    kind: fc.constantFrom('a', 'b', 'c'),
    materials: fc.subarray(['steel', 'brass', 'glass']),
    uses: fc.integer({ min: 0, max: 6 }),
    route: fc.constantFrom('open', 'ask', 'shut'),
  },
  { requiredKeys: [] },
);

/** Random rulebooks with bounds, dates, guards, marked gaps, and facts that the clinic states. */
export const variedRulebook: fc.Arbitrary<Rulebook> = fc
  .record({
    rulebook: randomRulebook,
    vocabulary: fc.constantFrom(...Object.keys(vocabularies)),
    states: fc.oneof(fc.constant({}), clinicStates),
    marked: fc.boolean(),
  })
  .map(({ rulebook, vocabulary, states, marked }) => {
    const varied: Rulebook = {
      ...rulebook,
      facts: (vocabularies[vocabulary] ?? ((facts) => facts))(plainFacts),
      clinic: { ...rulebook.clinic, facts: states },
    };
    // A decision cannot look at its own answer, not even through what a fact is only asked under.
    const free = vocabulary !== 'answered' ? varied : mapDecision(varied, 'route', (rules) => rules.map(withoutUses));
    if (!marked) return free;
    const decisions = new Map(
      [...free.decisions].map(([id, decision]): [string, Decision] => [
        id,
        { ...decision, gaps: [{ when: isOneOf('kind', ['a']), layer: 'base', because: 'so it is', place: decision.place }] },
      ]),
    );
    return { ...free, decisions };
  });

function withoutUses(rule: Rule): Rule {
  const when = mapCondition(rule.when, (part) =>
    part.kind === 'test' && part.fact === 'uses' ? isOneOf('hollow', [true]) : part,
  );
  return { ...rule, when };
}
