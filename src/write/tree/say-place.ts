import type { Rulebook } from '../../link/rulebook.js';
import { phrase } from '../text/phrase.js';
import { sayList } from '../text/say-list.js';

/** The persons of the clinic in a role: `Ana Ruiz (infection control lead)`. */
export function sayRole(rulebook: Rulebook, id: string): string | undefined {
  const { clinic, terms } = rulebook;
  const term = terms.get(id);
  if (term === undefined || term.domain !== 'role') return undefined;
  const names = clinic.people.filter(({ roles }) => roles.includes(id)).map(({ name }) => name);
  if (names.length === 0) return id === 'everyone' ? term.label : phrase(rulebook, 'place.term', { term: term.label });
  return `${sayList(rulebook, names, 'or')} (${term.label})`;
}

/** The rooms of the clinic that hold a zone; a room of several zones with the zone: `Instrument room (dirty side)`. */
export function sayZone(rulebook: Rulebook, id: string): string | undefined {
  const { clinic, terms } = rulebook;
  const term = terms.get(id);
  if (term === undefined || term.domain !== 'zone') return undefined;
  const rooms = clinic.rooms.filter(({ zones }) => zones.includes(id));
  if (rooms.length === 0) return phrase(rulebook, 'place.term', { term: term.label });
  const shared = rooms.some(({ zones }) => zones.length > 1);
  return `${sayList(
    rulebook,
    rooms.map(({ name }) => name),
    'or',
  )}${shared ? ` (${term.label})` : ''}`;
}

/** The clinic's machines of a kind, those in service first of all: `Washer 1 or Washer 2`. */
export function sayMachines(rulebook: Rulebook, kind: string): string | undefined {
  const { machines, terms } = rulebook;
  const term = terms.get(kind);
  if (term === undefined || term.domain !== 'machine-kind') return undefined;
  const own = [...machines.values()].filter((machine) => machine.kind === kind);
  const running = own.filter(({ inService }) => inService);
  const named = running.length > 0 ? running : own;
  return named.length === 0
    ? phrase(rulebook, 'place.term', { term: term.label })
    : sayList(
        rulebook,
        named.map(({ name }) => name),
        'or',
      );
}
