import type { Rulebook } from '../../link/rulebook.js';
import { join } from '../text/markdown.js';
import { said, saidText } from '../text/markdown-safe.js';
import { sayDate } from '../text/say-date.js';
import { joinWith } from '../text/say-list.js';
import { labelOf } from './label-of.js';
import { modelCardList } from './model-cards.js';

/** What the manual covers: people, rooms, machines, products and contacts. */
export function modelScope(rulebook: Rulebook) {
  const { clinic, machines } = rulebook;
  const labels = (ids: readonly string[]) =>
    joinWith(
      rulebook,
      'list.comma',
      ids.map((id) => labelOf(rulebook, id)),
    );
  return {
    about: saidText(clinic.about, 'clinic'),
    people: clinic.people.map(({ name, job, roles }) => ({ name, job, roles: labels(roles) })),
    rooms: clinic.rooms.map(({ name, zones, note }) => ({
      name: said(name, 'clinic'),
      zones: labels(zones),
      note: saidText(note ?? '', 'clinic'),
    })),
    machines: [...machines.values()].map((machine) => ({
      id: machine.id,
      name: machine.name,
      kind: labelOf(rulebook, machine.kind),
      model: said(`${machine.maker} ${machine.model}, ${machine.serial}`, machine.id),
      room: said(clinic.rooms.find(({ id }) => id === machine.room)?.name ?? machine.room, 'clinic'),
      installed: sayDate(machine.installed, rulebook.language),
      instructions: said(`${machine.instructions.title}, ${machine.instructions.edition}`, machine.id),
      kept: said(machine.instructions.kept, machine.id),
      inService: machine.inService,
      note: machine.note === undefined ? null : saidText(machine.note, machine.id),
    })),
    supplies: (clinic.supplies ?? []).map(({ for: purpose, name, use, where }) => ({
      purpose: said(purpose, 'clinic'),
      name: said(name, 'clinic'),
      use: saidText(use, 'clinic'),
      where: said(where ?? '', 'clinic'),
    })),
    cards: modelCardList(rulebook),
    contacts: clinic.contacts.map(({ id, for: purpose, name, phone, note }) => ({
      id,
      purpose: said(purpose, 'clinic'),
      name: said(name, 'clinic'),
      phone: said(phone, 'clinic'),
      note: note === undefined ? join([]) : saidText(note, 'clinic'),
    })),
  };
}
