import type { Rulebook } from '../../link/rulebook.js';
import { sayList } from '../text/say-list.js';

/** The persons of the clinic in a role: `Ana Ruiz (infection control lead)`. */
export function sayRole({ clinic, terms }: Pick<Rulebook, 'clinic' | 'terms'>, id: string): string | undefined {
  const term = terms.get(id);
  if (term === undefined || term.domain !== 'role') return undefined;
  const names = clinic.people.filter(({ roles }) => roles.includes(id)).map(({ name }) => name);
  if (names.length === 0) return id === 'everyone' ? term.label : `the ${term.label}`;
  return `${sayList(names, 'or')} (${term.label})`;
}

/** The rooms of the clinic that hold a zone; a room of several zones with the zone: `Instrument room (dirty side)`. */
export function sayZone({ clinic, terms }: Pick<Rulebook, 'clinic' | 'terms'>, id: string): string | undefined {
  const term = terms.get(id);
  if (term === undefined || term.domain !== 'zone') return undefined;
  const rooms = clinic.rooms.filter(({ zones }) => zones.includes(id));
  if (rooms.length === 0) return `the ${term.label}`;
  const shared = rooms.some(({ zones }) => zones.length > 1);
  return `${sayList(
    rooms.map(({ name }) => name),
    'or',
  )}${shared ? ` (${term.label})` : ''}`;
}

/** The clinic's machines of a kind, those in service first of all: `Washer 1 or Washer 2`. */
export function sayMachines({ machines, terms }: Pick<Rulebook, 'machines' | 'terms'>, kind: string): string | undefined {
  const term = terms.get(kind);
  if (term === undefined || term.domain !== 'machine-kind') return undefined;
  const own = [...machines.values()].filter((machine) => machine.kind === kind);
  const running = own.filter(({ inService }) => inService);
  const named = running.length > 0 ? running : own;
  return named.length === 0
    ? `the ${term.label}`
    : sayList(
        named.map(({ name }) => name),
        'or',
      );
}
