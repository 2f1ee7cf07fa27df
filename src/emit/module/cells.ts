import { cutPieces, type FactTest } from '../../analyse/pieces.js';
import { type Answering, programsOf } from '../../decide/decide.js';
import { passes } from '../../decide/truth.js';
import type { Fact, FactValue, Test } from '../../link/rulebook.js';
import { fromBaseUnit } from '../../measure/quantity.js';
import { type Bounds, boundsOf, type Cut, cutOf } from './cuts.js';

/** The cells into which the rules cut what a fact can say. Cell 0 is always: not stated. */
export type Cells =
  /** Enum or boolean: cell `i + 1` holds the members `of[i]`, which no test tells apart. */
  | { kind: 'members'; of: (string | boolean)[][] }
  /** Quantity, count or date: the cell is 1 and how many cuts lie at or below the number. */
  | { kind: 'numbers'; cuts: Cut[]; bounds: Bounds }
  /** A set is known by which classes of alike members it has one of; a cell is such a selection, numbered as they come. */
  | { kind: 'set'; classes: string[][]; untested: string[] }
  /** The answer of another decision: the bit set of the answers that are still possible. */
  | { kind: 'answer'; decision: string; possible: string[] };

/** A fact as the module knows it. */
export interface CutFact {
  /** Its place among the facts that the rules look at. */
  index: number;
  fact: Fact;
  cells: Cells;
  /** What the clinic states, as the fact's own unit and type have it, and its cell; absent where it states nothing. */
  clinic?: { value: unknown; cell: number };
}

/** No bit set of possible answers is longer. */
const mostAnswers = 30;

/** The facts that the tests look at, cut into cells, in the order of the rulebook. */
export function cutFacts(rulebook: Answering, tests: readonly FactTest[]): Map<string, CutFact> {
  const byFact = new Map<string, Test[]>();
  for (const { fact, test } of tests) {
    const list = byFact.get(fact);
    if (list === undefined) byFact.set(fact, [test]);
    else list.push(test);
  }
  const cut = new Map<string, CutFact>();
  for (const [id, fact] of rulebook.facts) {
    const ofFact = byFact.get(id);
    if (ofFact === undefined) continue;
    const cells = cellsOf(rulebook, fact, ofFact);
    const value = Object.hasOwn(rulebook.clinic.facts, id) ? rulebook.clinic.facts[id] : undefined;
    cut.set(id, {
      index: cut.size,
      fact,
      cells,
      ...(value !== undefined && { clinic: { value: asGiven(fact, value), cell: cellOf(cells, value) } }),
    });
  }
  return cut;
}

function cellsOf(rulebook: Answering, fact: Fact, tests: readonly Test[]): Cells {
  switch (fact.type) {
    case 'answer':
      return { kind: 'answer', decision: fact.decision ?? '', possible: possibleAnswers(rulebook, fact) };
    case 'enum':
    case 'boolean':
    case 'set': {
      const { kind, pieces } = cutPieces([fact], tests);
      if (kind === 'set') {
        const named = new Set<string | boolean>(tests.flatMap((test) => (test.kind === 'compare' ? [] : test.members)));
        const isTested = ([member]: string[]) => member !== undefined && named.has(member);
        return { kind, classes: pieces.filter(isTested), untested: pieces.filter((each) => !isTested(each)).flat() };
      }
      return { kind: 'members', of: kind === 'members' ? pieces : [] };
    }
    default: {
      const cuts = new Map<number, Cut>();
      for (const test of distinct(tests)) {
        if (test.kind !== 'compare') continue;
        const cut = cutOf(fact, test);
        cuts.set(cut.from, cut);
      }
      return { kind: 'numbers', cuts: [...cuts.values()].sort((a, b) => a.from - b.from), bounds: boundsOf(fact) };
    }
  }
}

function distinct(tests: readonly Test[]): Test[] {
  return [...new Map(tests.map((test) => [test.kind === 'compare' ? `${test.op} ${test.value}` : '', test])).values()];
}

/** Every answer that a decision can have. */
export function possibleAnswers(rulebook: Answering, { id, decision = '' }: Fact): string[] {
  const asked = rulebook.decisions.get(decision);
  if (asked === undefined) throw new RangeError(`no decision \`${decision}\` for \`${id}\``);
  const possible =
    asked.kind === 'verdict' ? asked.outcomes : [...programsOf(asked, rulebook).map((program) => program.id), 'none'];
  if (possible.length > mostAnswers) throw new RangeError(`\`${decision}\` has more than ${mostAnswers} answers`);
  return possible;
}

/** A fact's value as a caller writes it: quantities in the fact's unit, days as YYYY-MM-DD. */
export function asGiven({ type, unit = '1' }: Fact, value: FactValue): unknown {
  if (type === 'quantity') return fromBaseUnit(Number(value), unit).value;
  if (type === 'date') return new Date(Number(value) * 86_400_000).toISOString().slice(0, 10);
  return value;
}

/** Of what the clinic states. A set has no cell of its own yet; of an answer, 1 and its place among the possible ones. */
function cellOf(cells: Cells, value: FactValue): number {
  switch (cells.kind) {
    case 'members':
      return 1 + cells.of.findIndex((members) => members.some((member) => member === value));
    case 'numbers':
      return 1 + cells.cuts.filter((cut) => (cut.after ? Number(value) > cut.value : Number(value) >= cut.value)).length;
    case 'set':
      return 0;
    case 'answer':
      return 1 + cells.possible.indexOf(String(value));
  }
}

/** How many cells there are with the one for not stated, of members and numbers. */
export function countCells(cells: Cells): number {
  if (cells.kind === 'members') return cells.of.length + 1;
  return cells.kind === 'numbers' ? cells.cuts.length + 2 : 1;
}

/** The cells whose values pass a test, of members and numbers. */
export function passingCells({ fact, cells }: CutFact, test: Test): number[] {
  if (cells.kind === 'members')
    return cells.of.flatMap(([member], index) => (member !== undefined && passes(member, test) === true ? [index + 1] : []));
  if (cells.kind !== 'numbers') return [];
  const all = Array.from({ length: countCells(cells) - 1 }, (_, index) => index + 1);
  if (test.kind !== 'compare') return test.kind === 'none-of' ? all : [];
  const { from } = cutOf(fact, test);
  const later = cells.cuts.findIndex((cut) => cut.from === from) + 2;
  const isUp = test.op === 'at-least' || test.op === 'above';
  return all.filter((cell) => (isUp ? cell >= later : cell < later));
}

/** The bit set of the answers that pass a test. */
export function passingAnswers(possible: readonly string[], test: Test): number {
  return possible.reduce((bits, answer, index) => (passes(answer, test) === true ? bits | (1 << index) : bits), 0);
}

/** How a set is tested: whether it has one, all, none or not all of some classes. */
export interface SetTest {
  op: 0 | 1 | 2 | 3;
  classes: number[];
}

/** A test of a set by its classes. A member that there is not stands for class -1, which no set has. */
export function setTest(classes: readonly (readonly string[])[], test: Test, negated: boolean): SetTest {
  if (test.kind === 'compare' || test.kind === 'one-of') return { op: negated ? 2 : 0, classes: [] };
  const named = new Set(test.members.map((member) => classes.findIndex((alike) => alike.includes(member))));
  const positive = { 'any-of': 0, 'all-of': 1, 'none-of': 2 } as const;
  const op = positive[test.kind];
  const opposite = [2, 3, 0, 1] as const;
  return { op: negated ? opposite[op] : op, classes: [...named].sort((a, b) => a - b) };
}
