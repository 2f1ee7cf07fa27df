import type { Place } from '../read/finding.js';
import { quoted } from '../read/quoted.js';
import type { Located, Path } from '../read/read-documents.js';
import type { CardDocument } from '../read/types.gen.js';
import { compileCondition, type Vocabulary } from './compile-condition.js';
import { readSituation } from './link-decisions.js';
import { isFirst } from './link-vocabulary.js';
import { eachOf, expectKnown, expectTerm, type Linking, listed, report, usualOrder } from './linking.js';
import { limitsBehind, writtenAbove } from './origins.js';
import { referencesIn } from './references.js';
import type { Card, CardLine, LinkedRules, Origin, OriginKind } from './rulebook.js';

interface RawLine {
  say: string;
  from: string[];
}

/** The wall cards of all layers. What their lines restate is looked at when everything is linked: `checkCards`. */
export function linkCards(linking: Linking, vocabulary: Vocabulary): Map<string, Card> {
  const cards = new Map<string, Card>();
  const placed = new Map<string, Place>();
  for (const { layer, document } of eachOf(linking, 'card')) {
    const { data } = document;
    if (!isFirst(linking, placed, 'card', data.id, document.at(['id']))) continue;
    data.places.forEach((zone, index) => expectTerm(linking, zone, 'zone', document.at(['places', index])));
    if (data.machine !== undefined) expectTerm(linking, data.machine, 'machine-kind', document.at(['machine']));
    const onlyWhen = data['only-when'] && compileCondition(linking, vocabulary, data['only-when'], document, ['only-when']);
    const lineOf = ({ say, from }: RawLine): CardLine => ({ say, from: from.map(originOf), layer: layer.id });
    cards.set(data.id, {
      id: data.id,
      title: data.title,
      places: data.places,
      ...(data.machine !== undefined && { machine: data.machine }),
      order: data.order ?? usualOrder,
      ...(onlyWhen !== undefined && { onlyWhen }),
      ...(data.caution !== undefined && { caution: lineOf(data.caution) }),
      ...(data.choose !== undefined && {
        choose: {
          decision: data.choose.decision,
          loads: data.choose.loads.map(({ say, given }, index) => ({
            say,
            given: given.map((each, position) =>
              readSituation(linking, vocabulary, each, document, ['choose', 'loads', index, 'given', position]),
            ),
          })),
        },
      }),
      points: data.points.flatMap(({ id, ...line }, index) =>
        isFirst(linking, placed, 'line', `${data.id}/${id}`, document.at(['points', index, 'id']))
          ? [{ id, ...lineOf(line) }]
          : [],
      ),
      ...(data.stop !== undefined && { stop: lineOf(data.stop) }),
      call: data.call.map(({ when, whom }) => {
        const { kind, id } = split(whom);
        return { when, whom: { kind: kind === 'contact' ? 'contact' : 'role', id } };
      }),
      layer: layer.id,
      place: document.at(['id']),
    });
  }
  return cards;
}

function originOf(text: string): Origin {
  const { kind, id } = split(text);
  return { kind: originKinds.find((each) => each === kind) ?? 'procedure', id };
}

const originKinds: readonly OriginKind[] = ['step', 'rule', 'task', 'limit', 'procedure'];

/** `contact:service` in its two parts. */
function split(text: string): { kind: string; id: string } {
  const colon = text.indexOf(':');
  return { kind: text.slice(0, colon), id: text.slice(colon + 1) };
}

/**
 * Reports cards that restate what does not exist, name a limit that is not in what they restate, choose among no programs, or
 * call nobody.
 */
export function checkCards(linking: Linking, rules: LinkedRules): void {
  const known = idsOf(rules);
  for (const { layer, document } of eachOf(linking, 'card')) {
    for (const { line, path } of linesOf(document)) {
      const places = line.from.map((_, index) => document.at([...path, 'from', index]));
      const origins = line.from.map(originOf);
      const found = origins.map(({ kind, id }, index) =>
        expectKnown(linking, kind === 'limit' ? 'E303' : 'E306', kind, id, known[kind], places[index] ?? document.at(path)),
      );
      // Where a later layer wrote a step anew, the card says the new words.
      const current = !origins.some((origin) => writtenAbove(rules, origin, layer.id));
      if (found.every(Boolean) && current) expectLimits(linking, rules, document, line, path);
    }
    const { choose, call } = document.data;
    if (choose !== undefined) {
      const choices = [...rules.decisions.values()].filter(({ kind }) => kind === 'choice').map(({ id }) => id);
      expectKnown(linking, 'E306', 'decision', choose.decision, choices, document.at(['choose', 'decision']));
    }
    call.forEach(({ whom }, index) => {
      const { kind, id } = split(whom);
      const place = document.at(['call', index, 'whom']);
      if (kind === 'role') expectTerm(linking, id, 'role', place);
      else
        expectKnown(
          linking,
          'E306',
          'contact',
          id,
          rules.clinic.contacts.map((each) => each.id),
          place,
        );
    });
  }
}

function linesOf({ data }: Located<CardDocument>): { line: RawLine; path: Path }[] {
  return [
    ...(data.caution === undefined ? [] : [{ line: data.caution, path: ['caution'] }]),
    ...data.points.map((line, index) => ({ line, path: ['points', index] })),
    ...(data.stop === undefined ? [] : [{ line: data.stop, path: ['stop'] }]),
  ];
}

/** Reports a number on a card that none of what the line restates has. */
function expectLimits(linking: Linking, rules: LinkedRules, document: Located, { say, from }: RawLine, path: Path): void {
  const behind = from.flatMap((text) => limitsBehind(rules, originOf(text)));
  for (const { scheme, id } of referencesIn(say))
    if (scheme === 'limit' && rules.limits.has(id) && !behind.includes(id))
      report(
        linking,
        'E303',
        document.atWords([...path, 'say'], `[](limit:${id})`),
        `limit ${quoted(id)} is in nothing that this line restates`,
        behind.length > 0 ? listed(behind) : 'add what states it to `from:`',
      );
}

function idsOf({ procedures, decisions, tasks, limits }: LinkedRules): Record<OriginKind, string[]> {
  return {
    step: [...procedures.values()].flatMap(({ steps }) => steps.map(({ id }) => id)),
    // A rule that a later layer retired is known: the line is left out.
    rule: [...decisions.values()].flatMap(({ rules, retired }) =>
      [...rules, ...retired.map(({ rule }) => rule)].map(({ id }) => id),
    ),
    task: [...tasks.keys()],
    limit: [...limits.keys()],
    procedure: [...procedures.keys()],
  };
}
