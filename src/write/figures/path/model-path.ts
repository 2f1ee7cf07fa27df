import type { Machine, Rulebook } from '../../../link/rulebook.js';
import { labelOf } from '../../model/label-of.js';
import { phrase } from '../../text/phrase.js';
import { capitalize, sayList, uncapitalize } from '../../text/say-list.js';
import type { Figure } from '../figure.js';

/** The way of an instrument through the rooms of a clinic. */
export interface PathDrawing {
  kind: 'path';
  /** Rooms in which patients are treated, and what is said of all of them. */
  treatment: { about: string; rooms: { name: string; machines: string[] }[] };
  /** The stations between two treatments, in the order of work. */
  stations: Station[];
  /** Machines of rooms on the way that belong to none of its stations, by room. */
  beside: { room: string; roomId: string; machines: string[] }[];
  /** Machines of rooms off the way. */
  elsewhere: { room: string; machines: string[] }[];
  words: { used: string; sterile: string; dirty: string; clean: string };
}

/** A zone in a room. */
export interface Station {
  room: { id: string; name: string };
  zone: string;
  about: string;
  machines: string[];
  /** Whether used instruments are handled here. */
  isDirty: boolean;
}

const treatmentZone = 'treatment';

/** The zones between two treatments in the order of work, each with the kinds of machine that belong there. */
const zonesInOrder = [
  { zone: 'dirty-side', kinds: ['washer', 'ultrasonic-bath'] },
  { zone: 'clean-side', kinds: ['heat-sealer', 'handpiece-oiler'] },
  { zone: 'sterilizing-area', kinds: ['steam-sterilizer', 'dry-heat-sterilizer'] },
  { zone: 'sterile-storage', kinds: [] },
];

const dirtyZone = 'dirty-side';

/** The way of instruments through the clinic's rooms; nothing where the rooms hold no more than one zone of it. */
export function modelPath(rulebook: Rulebook): Figure | undefined {
  const { rooms } = rulebook.clinic;
  const machines = [...rulebook.machines.values()];
  const treating = rooms.filter(({ zones }) => zones.includes(treatmentZone));
  const stations = zonesInOrder.flatMap(({ zone, kinds }) =>
    rooms
      .filter(({ zones }) => zones.some((each) => each === zone))
      .map((room): Station & { taken: Machine[] } => {
        const taken = kinds.flatMap((kind) => machines.filter((each) => each.room === room.id && each.kind === kind));
        return {
          room: { id: room.id, name: room.name },
          zone: capitalize(labelOf(rulebook, zone)),
          about: rulebook.terms.get(zone)?.definition ?? '',
          machines: taken.map((machine) => nameOf(rulebook, machine)),
          isDirty: zone === dirtyZone,
          taken,
        };
      }),
  );
  if (stations.length + treating.length < 2 || stations.length === 0) return undefined;
  const placed = new Set(stations.flatMap(({ taken }) => taken));
  const left = (room: string) =>
    machines.filter((each) => each.room === room && !placed.has(each)).map((each) => nameOf(rulebook, each));
  const drawing: PathDrawing = {
    kind: 'path',
    treatment: {
      about: rulebook.terms.get(treatmentZone)?.definition ?? '',
      rooms: treating.map(({ id, name }) => ({ name, machines: stations.some(({ room }) => room.id === id) ? [] : left(id) })),
    },
    stations: stations.map(({ taken: _, ...station }) => station),
    beside: rooms
      .filter(({ id }) => stations.some(({ room }) => room.id === id))
      .map(({ id, name }) => ({ room: name, roomId: id, machines: left(id) }))
      .filter((each) => each.machines.length > 0),
    elsewhere: rooms
      .filter(({ id }) => !stations.some(({ room }) => room.id === id) && !treating.some((room) => room.id === id))
      .map(({ id, name }) => ({ room: name, machines: left(id) }))
      .filter((each) => each.machines.length > 0),
    words: {
      used: phrase(rulebook, 'figure.path-used'),
      sterile: phrase(rulebook, 'figure.path-sterile'),
      dirty: phrase(rulebook, 'figure.path-dirty'),
      clean: phrase(rulebook, 'figure.path-clean'),
    },
  };
  return { id: 'path', caption: phrase(rulebook, 'figure.path-caption'), alt: describePath(rulebook, drawing), drawing };
}

function nameOf(rulebook: Rulebook, { name, inService }: Machine): string {
  return inService ? name : phrase(rulebook, 'figure.out-of-service', { machine: name });
}

function describePath(rulebook: Rulebook, { treatment, stations, beside, elsewhere }: PathDrawing): string {
  const say = (id: string, values: Record<string, string> = {}) => phrase(rulebook, `figure.path-alt-${id}`, values);
  const list = (items: readonly string[]) => sayList(rulebook, items, 'and');
  const rooms = list(treatment.rooms.map(({ name }) => name));
  const isParted = stations.some(({ isDirty }) => isDirty) && stations.some(({ isDirty }) => !isDirty);
  const others = [...treatment.rooms.map(({ name, machines }) => ({ room: name, machines })), ...beside, ...elsewhere];
  const sentences = [
    ...(rooms === '' ? [] : [say('start', { rooms })]),
    ...groupStations(stations).map(({ room, stations: inRoom }) => {
      const passed = inRoom.map(({ zone, machines }) => {
        const words = { zone: uncapitalize(zone), machines: list(machines) };
        return say(machines.length === 0 ? 'station' : 'station-with', words);
      });
      return say('room', { room: room.name, stations: list(passed) });
    }),
    ...(rooms === '' ? [] : [say('end', { rooms })]),
    ...(isParted ? [say('border')] : []),
    ...others
      .filter(({ machines }) => machines.length > 0)
      .map(({ room, machines }) => say('beside', { room, machines: list(machines) })),
  ];
  return sentences.join(' ');
}

/** Stations that come one after the other in one room. */
export function groupStations(stations: readonly Station[]): { room: Station['room']; stations: Station[] }[] {
  const groups: { room: Station['room']; stations: Station[] }[] = [];
  for (const station of stations) {
    const before = groups.at(-1);
    if (before?.room.id === station.room.id) before.stations.push(station);
    else groups.push({ room: station.room, stations: [station] });
  }
  return groups;
}
