import type { Place, Rulebook } from '../../link/rulebook.js';
import { printedDecisions } from './printed-decisions.js';

/** One thing of the rules that has an id: `{ kind: 'rule', id: 'drying/hollows' }`, and where it was written. */
export interface Known {
  kind: string;
  id: string;
  place: Place | undefined;
}

interface Kind {
  kind: string;
  /** Whether a manual must show each of them. */
  shown: boolean;
  all(rulebook: Rulebook): readonly { id: string; place?: Place | undefined }[];
}

/**
 * The kinds of thing that pages are marked with. A new kind of document is one line here: with `shown`, the gate asks for
 * a page of each, and the traceability annex lists it.
 */
const kinds: readonly Kind[] = [
  { kind: 'decision', shown: true, all: (rulebook) => printedDecisions(rulebook) },
  { kind: 'rule', shown: true, all: (rulebook) => printedDecisions(rulebook).flatMap(({ rules }) => rules) },
  {
    kind: 'limit',
    shown: true,
    all: ({ limits }) => [...limits.values()].map(({ id, chain }) => ({ id, place: chain.at(-1)?.place })),
  },
  { kind: 'task', shown: true, all: ({ tasks }) => [...tasks.values()] },
  { kind: 'procedure', shown: true, all: ({ procedures }) => [...procedures.values()] },
  { kind: 'step', shown: true, all: ({ procedures }) => [...procedures.values()].flatMap(({ steps }) => steps) },
  { kind: 'form', shown: true, all: ({ forms }) => [...forms.values()] },
  { kind: 'card', shown: false, all: ({ cards }) => [...cards.values()] },
  {
    kind: 'point',
    shown: false,
    all: ({ cards }) =>
      [...cards.values()].flatMap((card) => card.points.map(({ id }) => ({ id: `${card.id}/${id}`, place: card.place }))),
  },
  { kind: 'term', shown: false, all: ({ terms }) => [...terms.values()] },
  { kind: 'machine', shown: false, all: ({ machines }) => [...machines.values()] },
  { kind: 'opening', shown: false, all: ({ machines }) => [...machines.values()] },
  { kind: 'programs', shown: false, all: ({ machines }) => [...machines.values()] },
  { kind: 'program', shown: false, all: ({ machines }) => [...machines.values()].flatMap(({ programs }) => programs) },
  {
    kind: 'sheet',
    shown: false,
    all: ({ forms, machines }) =>
      [...forms.values()].flatMap(({ id, place }) => [...machines.keys()].map((machine) => ({ id: `${id}/${machine}`, place }))),
  },
];

/** The kinds of which a manual shows each. */
export const shownKinds: readonly string[] = kinds.filter(({ shown }) => shown).map(({ kind }) => kind);

/** All that is in force for a clinic and must stand on a page, kind by kind. */
export function inForce(rulebook: Rulebook): Known[] {
  return known(rulebook, ({ shown }) => shown);
}

/** Where everything was written that pages are marked with, by `kind:id`. */
export function placesOfKnown(rulebook: Rulebook): Map<string, Place> {
  return new Map(
    known(rulebook, () => true).flatMap(({ kind, id, place }): [string, Place][] =>
      place === undefined ? [] : [[`${kind}:${id}`, place]],
    ),
  );
}

function known(rulebook: Rulebook, wanted: (kind: Kind) => boolean): Known[] {
  return kinds.filter(wanted).flatMap(({ kind, all }) => all(rulebook).map(({ id, place }) => ({ kind, id, place })));
}
