import type {
  Choice,
  Citation,
  Condition,
  Fact,
  Limit,
  Machine,
  Rule,
  Rulebook,
  Step,
  Term,
  Verdict,
} from '../../src/link/rulebook.js';
import type { Quantity } from '../../src/measure/quantity.js';
import { shippedPhrases } from './shipped-phrases.js';

const place = { file: 'rules/base/small.yaml', line: 1, column: 1 };
const practice: Citation = { id: 'common-practice' };

/** A rulebook of one clinic with one washer, one of everything else, and whatever a test changes. */
export function smallRulebook(changes: Partial<Rulebook> = {}): Rulebook {
  const washer = smallWasher();
  return {
    digest: 'f'.repeat(64),
    on: '2026-12-01',
    packs: [{ id: 'base', version: '1.0.0', title: 'Small practice', about: 'All of it.', licence: 'Apache-2.0' }],
    language: 'en-US',
    paper: 'letter',
    wording: {},
    phrases: shippedPhrases(),
    alsoUnits: {},
    sources: byId([
      { id: 'common-practice', title: 'Common practice', type: 'common-practice' },
      { id: 'clinic', title: 'Clinic', type: 'clinic' },
      { id: 'handbook', title: 'Handbook of cleaning', publisher: 'An institute', year: 2020, type: 'handbook' },
      { id: 'unread', title: 'Never cited', type: 'paper' },
    ]),
    terms: byId(terms()),
    facts: byId(facts()),
    limits: byId([smallLimit('holding.longest-wait', 'Longest wait before cleaning', { value: 10, unit: 'min' })]),
    decisions: byId([smallVerdict(), smallChoice()]),
    tasks: byId([
      {
        id: 'care.filter',
        title: 'Clean the filter',
        machine: 'washer',
        every: { time: { value: 1, unit: 'd' } },
        on: ['A glove was lost'],
        role: 'lead',
        wear: ['gloves'],
        steps: ['Take it out of [](machine:washer).', 'Rinse it.'],
        pass: 'It is clean.',
        record: 'washer-log',
        source: practice,
        layer: 'base',
        chain: [{ layer: 'base', value: 'every day of use', source: practice, place }],
        place,
      },
    ]),
    cards: new Map(),
    duties: [{ task: 'care.filter', machine: washer.id, every: { cycles: { value: 20, unit: '{cycles}' } }, maker: 'section 4' }],
    procedures: byId([
      {
        id: 'wash',
        title: 'Wash by machine',
        stage: 'washing',
        order: 50,
        purpose: 'Blood comes off before it dries.',
        who: ['lead'],
        where: 'dirty-side',
        wear: ['gloves'],
        ready: ['Baskets.', 'The [](form:washer-log)'],
        cautions: ['Blades cut through gloves.'],
        steps: [
          smallStep('wash', 'start', 'Start [](machine:washer) within [](limit:holding.longest-wait).'),
          smallStep('wash', 'look', 'Look at the filter as in [](task:care.filter).'),
        ],
        done: 'The display says so.',
        records: ['washer-log'],
        decisions: ['washer'],
        source: { id: 'handbook', at: 'page 3', evidence: 'recalled' },
        layer: 'base',
        place,
      },
    ]),
    forms: byId([
      {
        id: 'washer-log',
        title: 'Washer log',
        purpose: 'Shows each load.',
        machine: 'washer',
        columns: [
          { id: 'day', label: 'Day', width: 1 },
          { id: 'wait', label: 'Wait', unit: 'min', width: 2, limit: 'holding.longest-wait' },
        ],
        rows: 3,
        layout: 'landscape',
        covers: 'Until it is full',
        'signed-by': 'lead',
        keep: 'holding.longest-wait',
        layer: 'base',
        place,
      },
    ]),
    clinic: {
      id: 'small',
      name: 'Small Clinic',
      address: ['1 Test Street'],
      phone: '555-0100',
      region: 'US',
      packs: { base: '^1.0.0' },
      document: {
        title: 'Manual',
        number: 'M-1',
        version: '1.0',
        effective: '2026-12-01',
        'review-by': '2027-12-01',
        'approved-by': 'ana',
      },
      people: [
        { id: 'ana', name: 'Ana Ruiz', job: 'Dentist', roles: ['lead'] },
        { id: 'ben', name: 'Ben Li', job: 'Assistant', roles: ['lead'] },
      ],
      rooms: [{ id: 'back', name: 'Back room', zones: ['dirty-side', 'clean-side'] }],
      contacts: [
        { id: 'post-exposure-care', for: 'Needlestick', name: 'Care', phone: '555-0101' },
        { id: 'poison-control', for: 'Swallowed', name: 'Poison', phone: '555-0102' },
        { id: 'emergency', for: 'Danger', name: 'Emergency', phone: '911' },
      ],
      facts: { 'clinic.implants': false },
      about: 'Two chairs. 40 patients drink 2 L each.',
    },
    machines: byId([washer]),
    instruments: byId([
      { id: 'mirror', name: 'Mirrors', group: 'Examination', count: 12, facts: { 'instrument.materials': ['steel'] } },
      { id: 'gift', name: 'A gift', group: 'Examination', facts: {} },
    ]),
    changes: [],
    notHere: new Map(),
    ...changes,
  };
}

function byId<Item extends { id: string }>(items: readonly Item[]): Map<string, Item> {
  return new Map(items.map((item) => [item.id, item]));
}

/** A limit set by the base pack. */
export function smallLimit(id: string, label: string, value: Quantity): Limit {
  return {
    id,
    label,
    stricter: 'lower',
    value,
    source: practice,
    chain: [{ layer: 'base', value: 'x', source: practice, place }],
  };
}

/** A rule of the washer decision. */
export function smallRule(name: string, when: Condition, outcome: string, changes: Partial<Rule> = {}): Rule {
  return {
    id: `washer/${name}`,
    name,
    when,
    outcome,
    addsOnly: false,
    because: 'It is so.',
    cautions: [],
    source: practice,
    examples: [],
    layer: 'base',
    place,
    ...changes,
  };
}

/** A verdict on the washer with these rules. */
export function smallVerdict(
  rules: Rule[] = [
    smallRule(
      'steel',
      { kind: 'test', fact: 'instrument.materials', test: { kind: 'all-of', members: ['steel'] } },
      'yes-please',
    ),
    smallRule(
      'aluminum',
      { kind: 'test', fact: 'instrument.materials', test: { kind: 'any-of', members: ['aluminum'] } },
      'keep-out',
    ),
  ],
): Verdict {
  return {
    kind: 'verdict',
    id: 'washer',
    title: 'What may be washed',
    stage: 'washing',
    order: 50,
    question: 'May it go into the washer?',
    register: 'Washer',
    outcomes: ['yes-please', 'keep-out'],
    say: { 'yes-please': 'into the washer', 'keep-out': 'keep it out' },
    otherwise: 'keep-out',
    rules,
    gaps: [],
    retired: [],
    place,
  };
}

function smallChoice(): Choice {
  return {
    kind: 'choice',
    id: 'program',
    title: 'Which program',
    stage: 'washing',
    order: 50,
    question: 'Which program?',
    from: ['washer'],
    prefer: [],
    rules: [
      {
        ...smallRule('dry', { kind: 'test', fact: 'load.soil', test: { kind: 'one-of', members: ['dried'] } }, ''),
        id: 'program/dry',
        needs: { kind: 'test', fact: 'program.removes', test: { kind: 'any-of', members: ['dried'] } },
        examples: [{ given: { 'load.soil': 'dried' }, applies: true, place }],
      },
    ],
    gaps: [],
    retired: [],
    place,
  };
}

function smallStep(procedure: string, name: string, words: string): Step {
  return { id: `${procedure}/${name}`, name, do: words, layer: 'base', place };
}

function smallWasher(): Machine {
  return {
    id: 'washer-1',
    kind: 'washer',
    name: 'Washer 1',
    maker: 'Maker',
    model: 'Model 3',
    serial: 'S-1',
    room: 'back',
    installed: '2020-01-02',
    inService: true,
    instructions: { title: 'Use', edition: '2', kept: 'Office' },
    facts: {},
    intervals: {},
    programs: [
      {
        id: 'washer-1/strong',
        name: 'Strong',
        machine: 'washer-1',
        use: 'For dried loads at 60 °C.',
        facts: { 'program.removes': ['dried'], 'program.time': 3600 },
        stages: [{ name: 'Wash', temperature: { value: 60, unit: 'Cel' }, time: { value: 9, unit: 'min' } }],
        place,
      },
    ],
    opening: ['Wait 30 minutes.', 'Pull.'],
    place,
  };
}

function terms(): Term[] {
  const term = (id: string, label: string, domain?: string): Term => ({
    id,
    label,
    definition: `What ${label} is.`,
    glossary: domain === undefined,
    place,
    ...(domain !== undefined && { domain }),
  });
  return [
    term('classes', 'classes', 'stage'),
    term('washing', 'washing', 'stage'),
    term('care', 'care', 'stage'),
    term('failure', 'failure', 'stage'),
    term('lead', 'lead', 'role'),
    term('infection-lead', 'infection control lead', 'role'),
    term('dirty-side', 'dirty side', 'zone'),
    term('clean-side', 'clean side', 'zone'),
    term('gloves', 'gloves', 'ppe'),
    term('washer', 'automatic washer', 'machine-kind'),
    term('steel', 'stainless steel', 'material'),
    term('aluminum', 'aluminum', 'material'),
    term('anodized', 'anodized aluminum', 'material'),
    term('dried', 'dried soil', 'soil'),
    term('light', 'light soil', 'soil'),
    term('lumen', 'lumen'),
  ];
}

function facts(): Fact[] {
  const fact = (id: string, label: string, type: Fact['type'], more: Partial<Fact> = {}): Fact => ({
    id,
    label,
    type,
    members: [],
    statedBy: 'person',
    question: `What about ${label}?`,
    ...more,
  });
  return [
    fact('instrument.materials', 'materials', 'set', { members: ['steel', 'aluminum', 'anodized'], statedBy: 'instrument' }),
    fact('load.soil', 'soil', 'enum', { members: ['light', 'dried'] }),
    fact('load.moist', 'kept moist', 'boolean'),
    fact('load.wait', 'time since use', 'quantity', { unit: 'min' }),
    fact('load.heat', 'heat of the load', 'quantity', { unit: 'Cel' }),
    fact('load.day', 'day of use', 'date'),
    fact('load.route', 'washer, by our rule', 'answer', { decision: 'washer', members: ['yes-please', 'keep-out'] }),
    fact('program.removes', 'removes', 'set', { members: ['light', 'dried'], statedBy: 'program' }),
    fact('program.time', 'whole duration', 'quantity', { unit: 'min', statedBy: 'program' }),
    fact('clinic.implants', 'places implants', 'boolean', { statedBy: 'clinic' }),
  ];
}
