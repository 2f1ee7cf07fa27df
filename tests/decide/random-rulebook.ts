import fc from 'fast-check';
import type {
  Choice,
  Condition,
  Decision,
  Fact,
  FactValue,
  Rule,
  Rulebook,
  Situation,
  Verdict,
} from '../../src/link/rulebook.js';
import { shippedPhrases } from '../write/shipped-phrases.js';

const place = { file: 'random.yaml', line: 1, column: 1 };
const source = { id: 'common-practice' };

const plainFact = (id: string, type: Fact['type'], more: Partial<Fact> = {}): Fact => ({
  id,
  label: id,
  type,
  members: [],
  statedBy: 'person',
  question: `${id}?`,
  ...more,
});

/** A fact of each type; `width` only means something where `hollow` is true, `route` is the answer of another decision. */
export const facts = new Map<string, Fact>(
  [
    plainFact('hollow', 'boolean'),
    plainFact('kind', 'enum', { members: ['a', 'b', 'c'] }),
    plainFact('materials', 'set', { members: ['steel', 'brass', 'glass'] }),
    plainFact('width', 'quantity', {
      unit: 'mm',
      onlyWhen: { kind: 'test', fact: 'hollow', test: { kind: 'one-of', members: [true] } },
    }),
    plainFact('uses', 'count'),
    plainFact('route', 'answer', { members: ['open', 'ask', 'shut'], decision: 'route' }),
    plainFact('program.heat', 'quantity', { unit: 'Cel', statedBy: 'program' }),
    plainFact('program.takes', 'set', { members: ['a', 'b', 'c'], statedBy: 'program' }),
  ].map((fact) => [fact.id, fact]),
);

/** A value of every asked fact, so that leaving some out gives a partial situation that it completes. */
export const completeSituation: fc.Arbitrary<Situation> = fc.record({
  hollow: fc.boolean(),
  kind: fc.constantFrom('a', 'b', 'c'),
  materials: fc.subarray(['steel', 'brass', 'glass']),
  width: fc.integer({ min: 0, max: 6 }),
  uses: fc.integer({ min: 0, max: 6 }),
});

const bound = fc.integer({ min: 0, max: 6 });
const op = fc.constantFrom('at-least', 'at-most', 'above', 'below');
const compare = (fact: string) =>
  fc.record({ op, value: bound }).map(
    ({ op: each, value }): Condition => ({
      kind: 'test',
      fact,
      test: { kind: 'compare', op: each, value, shown: String(value) },
    }),
  );
const members = (all: string[]) => fc.subarray(all, { minLength: 1 });

const askedTest: fc.Arbitrary<Condition> = fc.oneof(
  fc.boolean().map((value): Condition => ({ kind: 'test', fact: 'hollow', test: { kind: 'one-of', members: [value] } })),
  fc
    .tuple(fc.constantFrom('one-of', 'none-of'), members(['a', 'b', 'c']))
    .map(([kind, of]): Condition => ({ kind: 'test', fact: 'kind', test: { kind, members: of } })),
  fc
    .tuple(fc.constantFrom('any-of', 'all-of', 'none-of'), members(['steel', 'brass', 'glass']))
    .map(([kind, of]): Condition => ({ kind: 'test', fact: 'materials', test: { kind, members: of } })),
  compare('width'),
  compare('uses'),
);
const answerTest: fc.Arbitrary<Condition> = fc
  .tuple(fc.constantFrom('one-of', 'none-of'), members(['open', 'ask', 'shut']))
  .map(([kind, of]): Condition => ({ kind: 'test', fact: 'route', test: { kind, members: of } }));
const programTest: fc.Arbitrary<Condition> = fc.oneof(
  compare('program.heat'),
  members(['a', 'b', 'c']).map(
    (of): Condition => ({ kind: 'test', fact: 'program.takes', test: { kind: 'all-of', members: of } }),
  ),
);

const nested = (test: fc.Arbitrary<Condition>): fc.Arbitrary<Condition> =>
  fc.letrec<{ condition: Condition }>((tie) => ({
    condition: fc.oneof(
      { maxDepth: 3, depthSize: 'small' },
      test,
      fc.array(tie('condition'), { minLength: 1, maxLength: 3 }).map((of): Condition => ({ kind: 'all', of })),
      fc.array(tie('condition'), { minLength: 1, maxLength: 3 }).map((of): Condition => ({ kind: 'any', of })),
      tie('condition').map((of): Condition => ({ kind: 'not', of })),
    ),
  })).condition;

const rule = (decision: string, index: number, when: Condition, more: Partial<Rule>): Rule => ({
  id: `${decision}/r${index}`,
  name: `r${index}`,
  when,
  addsOnly: false,
  because: 'it is so',
  cautions: [],
  source,
  examples: [],
  layer: 'base',
  place,
  ...more,
});

const verdict = (id: string, test: fc.Arbitrary<Condition>): fc.Arbitrary<Verdict> =>
  fc
    .record({
      otherwise: fc.constantFrom('ask', 'shut'),
      rules: fc.array(fc.tuple(nested(test), fc.constantFrom('open', 'ask', 'shut')), { maxLength: 6 }),
    })
    .map(({ otherwise, rules }) => ({
      kind: 'verdict',
      id,
      title: id,
      stage: 'washing',
      order: 50,
      question: `${id}?`,
      outcomes: ['open', 'ask', 'shut'],
      say: { open: 'open', ask: 'ask', shut: 'shut' },
      otherwise,
      rules: rules.map(([when, outcome], index) => rule(id, index, when, { outcome })),
      gaps: [],
      retired: [],
      place,
    }));

const choice: fc.Arbitrary<Choice> = fc
  .array(fc.tuple(nested(askedTest), nested(programTest), fc.boolean()), { maxLength: 4 })
  .map((rules) => ({
    kind: 'choice',
    id: 'program',
    title: 'program',
    stage: 'washing',
    order: 50,
    question: 'program?',
    from: ['washer'],
    prefer: [{ fact: 'program.heat', first: 'lowest' }],
    rules: rules.map(([when, needs, addsOnly], index) => rule('program', index, when, { needs, addsOnly })),
    gaps: [],
    retired: [],
    place,
  }));

const programFacts: fc.Arbitrary<Record<string, FactValue>> = fc.record(
  { 'program.heat': bound, 'program.takes': fc.subarray(['a', 'b', 'c']) },
  { requiredKeys: [] },
);

/** A rulebook with a verdict, a second verdict that looks at the first one's answer, and a choice among random programs. */
export const randomRulebook: fc.Arbitrary<Rulebook> = fc
  .record({
    route: verdict('route', askedTest),
    later: verdict('later', fc.oneof(askedTest, answerTest)),
    program: choice,
    programs: fc.array(programFacts, { maxLength: 4 }),
  })
  .map(({ route, later, program, programs }) => rulebookOf([route, later, program], programs));

/** A small rulebook around given decisions and programs of one washer. */
export function rulebookOf(decisions: readonly Decision[], programs: readonly Situation[] = []): Rulebook {
  return {
    digest: '0'.repeat(64),
    on: '2026-12-01',
    packs: [],
    language: 'en-US',
    paper: 'letter',
    wording: {},
    phrases: shippedPhrases(),
    alsoUnits: {},
    sources: new Map(),
    terms: new Map(),
    facts,
    limits: new Map(),
    decisions: new Map(decisions.map((decision) => [decision.id, decision])),
    tasks: new Map(),
    duties: [],
    procedures: new Map(),
    policies: new Map(),
    requirements: new Map(),
    forms: new Map(),
    cards: new Map(),
    clinic: {
      id: 'here',
      name: 'Here',
      address: ['1 Road'],
      phone: '555-0100',
      region: 'US',
      packs: {},
      document: {
        title: 'Manual',
        number: '1',
        version: '1',
        effective: '2026-12-01',
        'review-by': '2027-12-01',
        'approved-by': 'ann',
      },
      people: [],
      rooms: [],
      contacts: [],
      about: 'A clinic.',
      facts: {},
    },
    machines: new Map([
      [
        'washer-1',
        {
          id: 'washer-1',
          kind: 'washer',
          name: 'Washer',
          maker: 'Maker',
          model: 'Model',
          serial: '1',
          room: 'room',
          installed: '2025-01-01',
          instructions: { title: 'Handbook', edition: '1', kept: 'shelf' },
          inService: true,
          facts: {},
          intervals: {},
          programs: programs.map((each, index) => ({
            id: `washer-1/p${index}`,
            name: `P${index}`,
            machine: 'washer-1',
            use: 'washing',
            facts: each,
            stages: [],
            place,
          })),
          place,
        },
      ],
    ]),
    instruments: new Map(),
    changes: [],
    notHere: new Map(),
  };
}
