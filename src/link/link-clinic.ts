import { compareQuantities } from '../measure/quantity.js';
import { highestAltitude } from '../measure/steam.js';
import type { Place } from '../read/finding.js';
import { quoted } from '../read/quoted.js';
import type { Located } from '../read/read-documents.js';
import type { ClinicDocument, EquipmentDocument } from '../read/types.gen.js';
import type { Vocabulary } from './compile-condition.js';
import { readSituation } from './link-decisions.js';
import { isFirst } from './link-vocabulary.js';
import { eachOf, expectKnown, expectTerm, type Linking, report } from './linking.js';
import { readInterval, readQuantity } from './read-values.js';
import type {
  Clinic,
  InstrumentFamily,
  LinkedRules,
  Machine,
  Program,
  Situation,
  Stage,
  StagePressure,
  StatedBy,
  Task,
} from './rulebook.js';

/** The clinic with the facts it states, and `clinic.machines` worked out from its machine sheets. */
export function linkClinic(
  linking: Linking,
  vocabulary: Vocabulary,
  document: Located<ClinicDocument>,
  machines: ReadonlyMap<string, Machine>,
): Clinic {
  const { kind: _, facts: raw = {}, ...clinic } = document.data;
  const people = clinic.people.map(({ id }) => id);
  expectKnown(linking, 'E306', 'person', clinic.document['approved-by'], people, document.at(['document', 'approved-by']));
  clinic.people.forEach((person, index) => {
    person.roles.forEach((role, position) =>
      expectTerm(linking, role, 'role', document.at(['people', index, 'roles', position])),
    );
  });
  clinic.rooms.forEach((room, index) => {
    room.zones.forEach((zone, position) => expectTerm(linking, zone, 'zone', document.at(['rooms', index, 'zones', position])));
  });
  const placed = new Map<string, Place>();
  for (const [list, one] of [
    ['people', 'person'],
    ['rooms', 'room'],
    ['contacts', 'contact'],
  ] as const)
    clinic[list].forEach(({ id }, index) => isFirst(linking, placed, one, id, document.at([list, index, 'id'])));
  expectStatedBy(linking, vocabulary, raw, ['clinic'], document, ['facts']);
  const kinds = [...new Set([...machines.values()].map(({ kind }) => kind))].sort();
  return { ...clinic, facts: { ...readSituation(linking, vocabulary, raw, document, ['facts']), 'clinic.machines': kinds } };
}

/** The clinic's machines with what their makers state, in the order of their ids. */
export function linkMachines(linking: Linking, vocabulary: Vocabulary, tasks: ReadonlyMap<string, Task>): Map<string, Machine> {
  const machines = new Map<string, Machine>();
  const placed = new Map<string, Place>();
  for (const { document } of eachOf(linking, 'equipment')) {
    const {
      kind: _,
      machine: kind,
      'in-service': inService = true,
      facts: raw = {},
      intervals: rawIntervals = {},
      programs: rawPrograms = [],
      ...machine
    } = document.data;
    if (!isFirst(linking, placed, 'machine', machine.id, document.at(['id']))) continue;
    expectTerm(linking, kind, 'machine-kind', document.at(['machine']));
    expectStatedBy(linking, vocabulary, raw, ['machine'], document, ['facts']);
    const facts = readSituation(linking, vocabulary, raw, document, ['facts']);
    const intervals: Machine['intervals'] = {};
    for (const [task, { every: text, at }] of Object.entries(rawIntervals)) {
      const known = expectKnown(linking, 'E306', 'task', task, tasks.keys(), document.atKey(['intervals', task]));
      if (known && tasks.get(task)?.machine !== kind)
        report(
          linking,
          'E306',
          document.atKey(['intervals', task]),
          `task \`${task}\` is not for a ${kind.replaceAll('-', ' ')}`,
          'state intervals of tasks for this kind of machine only',
        );
      const every = readInterval(linking, text, document.at(['intervals', task, 'every']));
      if (every !== undefined) intervals[task] = { every, at };
    }
    const programs = rawPrograms.map((program, index): Program => {
      const path = ['programs', index];
      isFirst(linking, placed, 'program', `${machine.id}/${program.id}`, document.at([...path, 'id']));
      expectStatedBy(linking, vocabulary, program.facts, ['program'], document, [...path, 'facts']);
      return {
        id: `${machine.id}/${program.id}`,
        name: program.name,
        machine: machine.id,
        use: program.use,
        facts: { ...facts, ...readSituation(linking, vocabulary, program.facts, document, [...path, 'facts']) },
        stages: program.stages.map(({ name, note, temperature: hot, time: long, pressure: press }, position): Stage => {
          const at = (key: string, ...deeper: string[]) => document.at([...path, 'stages', position, key, ...deeper]);
          const temperature = hot === undefined ? undefined : readQuantity(linking, hot, at('temperature'), 'Cel');
          const time = long === undefined ? undefined : readQuantity(linking, long, at('time'), 'min');
          const pressure = press && readPressure(linking, press, (key) => at('pressure', ...(key === undefined ? [] : [key])));
          return {
            name,
            ...(temperature && { temperature }),
            ...(time && { time }),
            ...(pressure && { pressure }),
            ...(note !== undefined && { note }),
          };
        }),
        ...(program.note !== undefined && { note: program.note }),
        place: document.at([...path, 'id']),
      };
    });
    machines.set(machine.id, { ...machine, kind, inService, facts, intervals, programs, place: document.at(['id']) });
  }
  return new Map([...machines].sort(([a], [b]) => (a < b ? -1 : 1)));
}

type RawPressure = NonNullable<EquipmentDocument['programs']>[number]['stages'][number]['pressure'];

/** The pressure of a stage: absolute, or of a gauge with the altitude at which it is read. */
function readPressure(
  linking: Linking,
  { absolute, gauge, altitude }: NonNullable<RawPressure>,
  at: (key?: string) => Place,
): StagePressure | undefined {
  if ((absolute === undefined) === (gauge === undefined) || (absolute !== undefined && altitude !== undefined)) {
    const help = 'write `{ absolute: 304 kPa }`, `{ gauge: 203 kPa }` or `{ gauge: 210 kPa, altitude: 600 m }`';
    report(linking, 'E210', at(), 'a pressure is either absolute or gauge', help);
    return undefined;
  }
  if (absolute !== undefined) {
    const quantity = readQuantity(linking, absolute, at('absolute'), 'kPa');
    return quantity && { absolute: quantity };
  }
  const quantity = gauge === undefined ? undefined : readQuantity(linking, gauge, at('gauge'), 'kPa');
  const height = altitude === undefined ? seaLevel : readQuantity(linking, altitude, at('altitude'), 'm');
  if (height !== undefined && compareQuantities(height, highestAltitude) > 0) {
    report(
      linking,
      'E210',
      at('altitude'),
      `no clinic is at ${quoted(altitude ?? '')}`,
      'the standard atmosphere is used up to 11,000 m',
    );
    return undefined;
  }
  return quantity && height && { gauge: quantity, altitude: height };
}

const seaLevel = { value: 0, unit: 'm' };

/** The clinic's instrument families. */
export function linkInstruments(linking: Linking, vocabulary: Vocabulary): Map<string, InstrumentFamily> {
  const families = new Map<string, InstrumentFamily>();
  const placed = new Map<string, Place>();
  for (const { document } of eachOf(linking, 'instruments'))
    for (const [id, { facts: raw, ...family }] of Object.entries(document.data.instruments)) {
      if (!isFirst(linking, placed, 'instrument family', id, document.atKey(['instruments', id]))) continue;
      expectStatedBy(linking, vocabulary, raw, ['instrument'], document, ['instruments', id, 'facts']);
      families.set(id, { id, ...family, facts: readSituation(linking, vocabulary, raw, document, ['instruments', id, 'facts']) });
    }
  return families;
}

/** Reports what the clinic lacks: rooms, people, roles and zones that others name, and a review that is overdue. */
export function checkClinic(linking: Linking, rules: LinkedRules, document: Located<ClinicDocument>): void {
  const rooms = rules.clinic.rooms.map(({ id }) => id);
  const people = rules.clinic.people.map(({ id }) => id);
  for (const { document: sheet } of eachOf(linking, 'equipment'))
    expectKnown(linking, 'E306', 'room', sheet.data.room, rooms, sheet.at(['room']));
  for (const { document: overrides } of eachOf(linking, 'overrides'))
    overrides.data.changes.forEach((change, index) => {
      const deviation = 'deviation' in change ? change.deviation : undefined;
      if (deviation !== undefined)
        expectKnown(
          linking,
          'E306',
          'person',
          deviation['approved-by'],
          people,
          overrides.at(['changes', index, 'deviation', 'approved-by']),
        );
    });
  const reviewBy = rules.clinic.document['review-by'];
  if (reviewBy < linking.on)
    report(
      linking,
      'W504',
      document.at(['document', 'review-by']),
      `the manual was to be looked at again by ${reviewBy}`,
      'look at it again and set a new date',
    );
  const isTermOf = (domain: string, id: string) => rules.terms.get(id)?.domain === domain;
  const held = new Set(rules.clinic.people.flatMap(({ roles }) => roles));
  for (const role of rolesAsked(rules))
    if (isTermOf('role', role) && !held.has(role) && role !== 'everyone' && role !== 'service-engineer')
      report(
        linking,
        'E322',
        document.atKey(['people']),
        `nobody holds the role \`${role}\``,
        'give it to a person: procedures, policies and tasks name it',
      );
  const zones = new Set(rules.clinic.rooms.flatMap((room) => room.zones));
  for (const { where } of rules.procedures.values())
    if (isTermOf('zone', where) && !zones.has(where))
      report(
        linking,
        'E322',
        document.atKey(['rooms']),
        `no room holds the zone \`${where}\``,
        'say which room it is in: procedures take place there',
      );
}

function rolesAsked(rules: LinkedRules): Set<string> {
  return new Set([
    ...[...rules.procedures.values()].flatMap(({ who }) => who),
    ...[...rules.policies.values()].flatMap(({ who }) => who),
    ...[...rules.tasks.values()].map(({ role }) => role),
  ]);
}

function expectStatedBy(
  linking: Linking,
  vocabulary: Vocabulary,
  raw: Situation | Record<string, unknown>,
  by: readonly StatedBy[],
  document: Located,
  path: readonly (string | number)[],
): void {
  for (const id of Object.keys(raw)) {
    const fact = vocabulary.facts.get(id);
    if (fact?.type === 'answer') {
      const help = `it is what \`${fact.decision ?? ''}\` answers; change the rules of that decision`;
      report(linking, 'E319', document.atKey([...path, id]), `\`${id}\` is not stated, but answered`, help);
    } else if (fact !== undefined && !by.includes(fact.statedBy))
      report(linking, 'E319', document.atKey([...path, id]), `\`${id}\` is not stated here`, `it is stated by: ${fact.statedBy}`);
    if (id === 'clinic.machines')
      report(
        linking,
        'E319',
        document.atKey([...path, id]),
        '`clinic.machines` is worked out from the machine sheets',
        'take it out',
      );
  }
}
