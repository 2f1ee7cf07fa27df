import type { Fact, Term } from '../link/rulebook.js';
import { calendarDay } from '../measure/day-number.js';
import { formatQuantity, fromBaseUnit } from '../measure/quantity.js';
import type { Pieces, Span } from './pieces.js';
import { type Allowed, allowedIn, type Box, type Dimension, type Space } from './space.js';

/** What words are taken from: the terms of one rulebook or of several; the first that knows a word wins. */
export type Words = readonly ReadonlyMap<string, Term>[];

/** One line of a region: a fact and what it says there. */
export interface SaidFact {
  fact: string;
  label: string;
  /** `more than 8 minutes up to 10 minutes`, `light soil or dried soil`, `yes`. */
  is: string;
  /** Whether it is a program that states it, not the situation. */
  ofProgram: boolean;
}

/** A region in words, a line a fact. Facts that are not named may say anything, or nothing. */
export function sayBox(box: Box, space: Space, words: Words): SaidFact[] {
  return [...space.dimensions.values()].flatMap((dimension): SaidFact[] => {
    if (!box.has(dimension.id)) return [];
    const { fact } = dimension;
    return [
      {
        fact: fact.id,
        label: fact.label,
        is: sayAllowed(allowedIn(box, dimension), dimension, words),
        ofProgram: dimension.id !== fact.id,
      },
    ];
  });
}

/** A region in one line: `wait: more than 8 minutes up to 10 minutes; soil: light soil`. */
export function boxInLine(said: readonly SaidFact[]): string {
  return said.length === 0 ? 'always' : said.map(({ label, is }) => `${label}: ${is}`).join('; ');
}

function sayAllowed(allowed: Allowed, { fact, pieces }: Dimension, words: Words): string {
  if (allowed.kind === 'set') return saySet(allowed, fact, pieces, words);
  const orNotStated = allowed.unstated ? ', or not stated' : '';
  if (allowed.pieces.length === 0) return 'not stated';
  if (pieces.kind === 'spans') {
    const [first, last] = [pieces.pieces[allowed.pieces[0] ?? 0], pieces.pieces[allowed.pieces.at(-1) ?? 0]];
    return first === undefined || last === undefined ? '' : `${saySpan(first, last, fact)}${orNotStated}`;
  }
  const members = (list: readonly number[]) => list.flatMap((index) => pieces.pieces[index] ?? []);
  const inside = members(allowed.pieces);
  const outside = members(pieces.pieces.map((_, index) => index).filter((index) => !allowed.pieces.includes(index)));
  if (outside.length === 0) return allowed.unstated ? 'anything' : 'stated';
  const say = (list: readonly (string | boolean)[]) => orList(list.map((member) => sayMember(member, fact, words)));
  const isShorter = outside.length * 2 < inside.length;
  return `${isShorter ? `anything but ${say(outside)}` : say(inside)}${orNotStated}`;
}

function saySet(allowed: Extract<Allowed, { kind: 'set' }>, fact: Fact, pieces: Pieces, words: Words): string {
  if (!allowed.stated) return 'not stated';
  const say = (list: readonly number[]) =>
    list.map((index) => {
      const members = pieces.pieces[index];
      return Array.isArray(members) ? orList(members.map((member) => sayMember(member, fact, words))) : '';
    });
  if (allowed.has.length === 0 && allowed.lacks.length === pieces.pieces.length)
    return allowed.unstated ? 'none, or not stated' : 'none';
  const parts = [
    ...(allowed.has.length > 0 ? [`with ${say(allowed.has).join(', with ')}`] : []),
    ...(allowed.lacks.length > 0 ? [`without ${orList(say(allowed.lacks).flatMap((each) => each.split(' or ')))}`] : []),
  ];
  const text = parts.length === 0 ? 'stated' : parts.join(', ');
  return allowed.unstated ? `${text}, or not stated` : text;
}

function saySpan(first: Span, last: Span, fact: Fact): string {
  const { least } = first;
  const { most } = last;
  if (least !== undefined && most !== undefined && least.value === most.value)
    return least.shown ?? most.shown ?? sayNumber(least.value, fact);
  // Where values end by themselves need not be said.
  const parts = [
    ...(least?.shown === undefined ? [] : [`${least.included ? 'from' : 'more than'} ${least.shown}`]),
    ...(most?.shown === undefined ? [] : [`${most.included ? 'up to' : 'less than'} ${most.shown}`]),
  ];
  return parts.length === 0 ? 'any' : parts.join(' and ');
}

/** A number in the base unit as people write it. */
export function sayNumber(value: number, { type, unit }: Pick<Fact, 'type' | 'unit'>): string {
  if (type === 'date') return calendarDay(value);
  return type === 'quantity' && unit !== undefined ? formatQuantity(fromBaseUnit(value, unit)) : String(value);
}

/** A member of an enumeration or set, an outcome, yes or no. */
export function sayMember(member: string | boolean, fact: Pick<Fact, 'decision'>, words: Words): string {
  if (typeof member === 'boolean') return member ? 'yes' : 'no';
  if (fact.decision !== undefined) return member;
  for (const terms of words) {
    const term = terms.get(member);
    if (term !== undefined) return term.label;
  }
  return member;
}

function orList(list: readonly string[]): string {
  if (list.length < 2) return list[0] ?? '';
  return `${list.slice(0, -1).join(', ')} or ${list.at(-1) ?? ''}`;
}
