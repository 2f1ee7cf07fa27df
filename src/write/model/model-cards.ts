import { decide, knownFacts } from '../../decide/decide.js';
import { truthOf } from '../../decide/truth.js';
import { ruleOf, stepOf } from '../../link/origins.js';
import type { Card, CardLine, Machine, Rulebook, Situation } from '../../link/rulebook.js';
import { join, type Markdown, refer } from '../text/markdown.js';
import { said, textOfLayer } from '../text/markdown-safe.js';
import { uncapitalize } from '../text/say-list.js';
import { modelMeta } from './model-title.js';

/** A card as it hangs: of a kind of machine, one for each machine in service. */
interface Hanging {
  card: Card;
  machine?: Machine;
}

/** All that the templates of wall cards print: the cards of a clinic in order, with whatever holds there. */
export function modelCards(rulebook: Rulebook, tool: string) {
  const { clinic, number, version, effective } = modelMeta(rulebook, tool);
  const control = { clinic, number, version, effective };
  return { cards: hangingCards(rulebook).map((hanging) => ({ ...modelCard(rulebook, hanging), control })) };
}

/** Which cards hang in which room. */
export function modelCardList(rulebook: Rulebook) {
  const hanging = hangingCards(rulebook);
  return rulebook.clinic.rooms.flatMap((room) => {
    const here = hanging.filter(({ card, machine }) =>
      machine === undefined ? card.places.some((zone) => room.zones.includes(zone)) : machine.room === room.id,
    );
    if (here.length === 0) return [];
    return [{ room: said(room.name, 'clinic'), cards: here.map((each) => nameOf(each)) }];
  });
}

function hangingCards({ cards, machines }: Rulebook): Hanging[] {
  return [...cards.values()]
    .sort((a, b) => a.order - b.order || (a.id < b.id ? -1 : 1))
    .flatMap((card): Hanging[] => {
      if (card.machine === undefined) return [{ card }];
      const own = [...machines.values()].filter(({ kind, inService }) => kind === card.machine && inService);
      return own.map((machine) => ({ card, machine }));
    });
}

function modelCard(rulebook: Rulebook, hanging: Hanging) {
  const { card, machine } = hanging;
  const lines = <Line extends CardLine>(all: readonly Line[]) => all.filter((line) => holdsAt(rulebook, machine, line));
  const text = (line: CardLine) => sayLine(line, card, machine);
  const [caution, stop] = [card.caution, card.stop].map((line) => (line === undefined ? [] : lines([line])).map(text)[0] ?? null);
  return {
    id: machine === undefined ? card.id : `${card.id}/${machine.id}`,
    name: nameOf(hanging),
    place: machine === undefined ? placesOf(rulebook, card) : roomOf(rulebook, machine),
    caution,
    programs: programsFor(rulebook, card, machine),
    points: lines(card.points).map((point) => ({
      id: `${card.id}/${point.id}`,
      from: point.from.map(({ kind, id }) => ({ kind, id })),
      say: text(point),
    })),
    stop,
    call: card.call.map(({ when, whom }) => sayCall(rulebook, card, when, whom)),
    pages: proceduresOf(rulebook, card).map((id) => refer('procedure', id)),
  };
}

/** `Washer 1: loading`, or the title of a card that belongs to no machine. */
function nameOf({ card, machine }: Hanging): Markdown {
  if (machine === undefined) return join([card.title]);
  return join([said(machine.name, 'clinic'), ': ', uncapitalize(card.title)]);
}

/** One zone by its name, several by the rooms that hold them. */
function placesOf({ clinic }: Rulebook, { places }: Card): Markdown {
  const rooms = clinic.rooms.filter(({ zones }) => places.some((zone) => zones.includes(zone)));
  const named =
    places.length === 1 || rooms.length === 0
      ? places.map((zone) => refer('zone', zone))
      : rooms.map(({ name }) => said(name, 'clinic'));
  return join(named, ' · ');
}

function roomOf({ clinic }: Rulebook, machine: Machine): Markdown {
  return said(clinic.rooms.find(({ id }) => id === machine.room)?.name ?? machine.room, 'clinic');
}

/** A line in its words; on the card of a machine, that machine alone is meant by its kind. */
function sayLine({ say, layer }: CardLine, card: Card, machine: Machine | undefined): Markdown {
  const { markdown } = textOfLayer(say, layer);
  if (machine === undefined || card.machine === undefined) return { markdown };
  return { markdown: markdown.replaceAll(refer('machine', card.machine).markdown, () => said(machine.name, 'clinic').markdown) };
}

/** Whether a line holds at a machine: a step or a task may hold for another one of its kind alone. */
function holdsAt(rulebook: Rulebook, machine: Machine | undefined, { from }: CardLine): boolean {
  if (machine === undefined) return true;
  const known = knownFacts(rulebook, machine.facts);
  return from.every(({ kind, id }) => {
    if (kind === 'task') {
      const held = rulebook.duties.filter(({ task }) => task === id);
      return (
        held.some((duty) => duty.machine === undefined || duty.machine === machine.id) ||
        rulebook.tasks.get(id)?.machine !== machine.kind
      );
    }
    const condition = kind === 'step' ? stepOf(rulebook, id)?.onlyWhen : kind === 'rule' ? ruleOf(rulebook, id)?.when : undefined;
    return condition === undefined || truthOf(condition, known) !== false;
  });
}

/**
 * The program that each usual load gets on a machine: the first one that is sure to do. Left out are loads of which
 * not all get the same one, and those that the lines above have named already.
 */
function programsFor(rulebook: Rulebook, { choose, layer }: Card, machine: Machine | undefined) {
  const decision = choose && rulebook.decisions.get(choose.decision);
  if (choose === undefined || decision?.kind !== 'choice' || rulebook.notHere.has(decision.id)) return [];
  const own = new Set(machine?.programs.map(({ id }) => id));
  const programFor = (given: Situation) =>
    decide(rulebook, decision.id, given).offers?.find(
      ({ program, meets }) => meets && (machine === undefined || own.has(program)),
    )?.program;
  const told = new Map<string, string>();
  return choose.loads.flatMap(({ say, given }) => {
    const answers = given.map((each) => [JSON.stringify(each), programFor(each)] as const);
    const [program, ...others] = new Set(answers.map(([, answer]) => answer));
    if (program === undefined || others.length > 0 || answers.every(([load]) => told.has(load))) return [];
    for (const [load] of answers) told.set(load, program);
    const name = rulebook.machines.get(program.split('/')[0] ?? '')?.programs.find(({ id }) => id === program)?.name;
    return [{ load: textOfLayer(say, layer), program: said(name ?? program, program) }];
  });
}

function sayCall({ clinic }: Rulebook, { layer }: Card, when: string, { kind, id }: Card['call'][number]['whom']) {
  const contact = kind === 'contact' ? clinic.contacts.find((each) => each.id === id) : undefined;
  return {
    when: textOfLayer(when, layer),
    whom: contact === undefined ? refer('role', id) : said(contact.name, 'clinic'),
    phone: contact === undefined ? null : said(contact.phone, 'clinic'),
  };
}

/** The procedures that a card restates, in the order in which it does. */
function proceduresOf(rulebook: Rulebook, { points, caution }: Card): string[] {
  const ids = [...points, ...(caution === undefined ? [] : [caution])].flatMap(({ from }) =>
    from.flatMap(({ kind, id }) => (kind === 'step' || kind === 'procedure' ? [id.split('/')[0] ?? ''] : [])),
  );
  return [...new Set(ids)].filter((id) => rulebook.procedures.has(id));
}
