import type { Fact, FactValue, Situation, Test } from '../link/rulebook.js';
import { Circuit } from './circuit.js';
import { compares, cutPieces, type FactTest, type Pieces, passesAlone, pieceOf } from './pieces.js';
import type { Literal } from './solver.js';

/** One fact of a situation: its pieces, and the literals that say which of them it is in. */
export interface Dimension {
  /** What it is called in a box: the fact's id, or of a program's fact `program` and the id. */
  id: string;
  fact: Fact;
  pieces: Pieces;
  /** Whether the fact is stated. */
  stated: Literal;
  /**
   * By piece. Of members, that the value is this one; of a set, that it has this member (or one of those alike); of spans, that the
   * value lies in this span or a later one. Each is false where the fact is not stated.
   */
  at: Literal[];
}

/** All situations as a solver sees them: what each fact may say, among them nothing. */
export interface Space {
  circuit: Circuit;
  dimensions: Map<string, Dimension>;
  /** Facts that are as the clinic states them: nobody says otherwise. */
  held: Set<string>;
}

/**
 * The space of what some tests can tell apart.
 *
 * @param tests by side: of each rulebook compared, so that the pieces are those of all of them
 * @param vocabularies the facts of each of these rulebooks
 */
export function spaceOf(
  tests: readonly FactTest[],
  vocabularies: readonly ReadonlyMap<string, Fact>[],
  circuit = new Circuit(),
): Space {
  const byFact = new Map<string, Test[]>();
  for (const { fact, test } of tests) {
    const list = byFact.get(fact);
    if (list === undefined) byFact.set(fact, [test]);
    else list.push(test);
  }
  const dimensions = new Map<string, Dimension>();
  for (const [id, ofFact] of byFact) {
    const versions = vocabularies.flatMap((facts) => facts.get(id) ?? []);
    const [fact] = versions;
    if (fact !== undefined) dimensions.set(id, dimensionOf(circuit, fact, cutPieces(versions, ofFact)));
  }
  return { circuit, dimensions, held: new Set() };
}

function dimensionOf(circuit: Circuit, fact: Fact, pieces: Pieces): Dimension {
  const { solver } = circuit;
  const stated = solver.add(true);
  const at = pieces.pieces.map(() => solver.add(true));
  for (const each of at) solver.require([-each, stated]);
  if (pieces.kind === 'members') {
    circuit.requireAtMostOne(at);
    solver.require([-stated, ...at]);
  }
  if (pieces.kind === 'spans') {
    const [first] = at;
    if (first !== undefined) solver.require([-stated, first]);
    at.forEach((each, index) => {
      const next = at[index + 1];
      if (next !== undefined) solver.require([-next, each]);
    });
  }
  return { id: fact.id, fact, pieces, stated, at };
}

/** Keeps to what a clinic states about itself: nobody says otherwise. */
export function holdTo(clinicFacts: Iterable<string>, { circuit, dimensions, held }: Space): void {
  for (const id of clinicFacts) {
    const dimension = dimensions.get(id);
    if (dimension === undefined) continue;
    circuit.solver.require([-dimension.stated]);
    held.add(id);
  }
}

/** True where the fact is stated and passes the test. */
export function passesWhereStated({ circuit }: Space, { pieces, stated, at }: Dimension, test: Test): Literal {
  switch (pieces.kind) {
    case 'members':
      return circuit.or(pieces.pieces.flatMap((members, index) => (passesAlone(members[0] ?? '', test) ? [at[index] ?? 0] : [])));
    case 'set': {
      if (test.kind === 'compare') return circuit.never;
      const named = pieces.pieces.flatMap(([member], index) =>
        test.members.some((each) => each === member) ? [at[index] ?? 0] : [],
      );
      if (test.kind === 'all-of') return circuit.and([stated, ...named]);
      return test.kind === 'none-of' ? circuit.and([stated, ...named.map((each) => -each)]) : circuit.or(named);
    }
    case 'spans': {
      if (test.kind !== 'compare') return circuit.never;
      const passing = pieces.pieces.map(({ example }) => compares(example, test));
      const first = passing.indexOf(true);
      if (first === -1) return circuit.never;
      const end = at[passing.lastIndexOf(true) + 1];
      return circuit.and([at[first] ?? 0, ...(end === undefined ? [] : [-end])]);
    }
  }
}

/** A space of what a situation says and what a program states, apart from each other. */
export function withProgram(situation: Space, program: Space): Space {
  const ofProgram = [...program.dimensions.values()].map((each): [string, Dimension] => {
    const id = `program ${each.id}`;
    return [id, { ...each, id }];
  });
  return { ...situation, dimensions: new Map([...situation.dimensions, ...ofProgram]) };
}

/** Part of a space: literals that all hold, by fact. A fact that is not named may say anything, or nothing. */
export type Box = Map<string, Literal[]>;

/** The smallest box around the situation that the solver found. */
export function boxFound(space: Space): Box {
  const { solver } = space.circuit;
  const sign = (literal: Literal) => (solver.isTrue(literal) ? literal : -literal);
  return new Map(
    [...space.dimensions].map(([id, { pieces, stated, at }]) => [
      id,
      pieces.kind === 'members'
        ? // That the value is one is said as that it is none of the others, so that others can be let in one by one.
          [sign(stated), ...at.flatMap((each) => (solver.isTrue(each) ? [] : [-each]))]
        : [sign(stated), ...at.map(sign)],
    ]),
  );
}

export function literalsOf(box: Box): Literal[] {
  return [...box.values()].flat();
}

/** What a box lets one fact say. */
export type Allowed =
  /** Of members and spans. */
  | { kind: 'values'; pieces: number[]; unstated: boolean }
  /** Of a set: pieces that are in it, and that are not. */
  | { kind: 'set'; has: number[]; lacks: number[]; unstated: boolean; stated: boolean };

/** What a box lets a fact of it say. */
export function allowedIn(box: Box, { id, pieces, stated, at }: Dimension): Allowed {
  const literals = new Set(box.get(id));
  const has = (literal: Literal | undefined) => literal !== undefined && literals.has(literal);
  if (pieces.kind === 'set') {
    const inside = at.flatMap((each, index) => (has(each) ? [index] : []));
    return {
      kind: 'set',
      has: inside,
      lacks: at.flatMap((each, index) => (has(-each) ? [index] : [])),
      unstated: !has(stated) && inside.length === 0,
      stated: !has(-stated),
    };
  }
  if (has(-stated)) return { kind: 'values', pieces: [], unstated: true };
  const allowed =
    pieces.kind === 'members'
      ? at.flatMap((each, index) => (has(-each) ? [] : [index]))
      : at.flatMap((_, index) =>
          at.slice(index + 1).some(has) || at.slice(0, index + 1).some((low) => has(-low)) ? [] : [index],
        );
  const unstated = !has(stated) && !at.some(has);
  return { kind: 'values', pieces: allowed, unstated };
}

/** A short situation in a box: states only what the box asks for. */
export function situationIn(box: Box, space: Space): Situation {
  const entries: [string, FactValue][] = [];
  for (const [id, dimension] of space.dimensions) {
    if (!box.has(id)) continue;
    const value = valueIn(allowedIn(box, dimension), dimension);
    if (value !== undefined) entries.push([id, value]);
  }
  return Object.fromEntries(entries);
}

function valueIn(allowed: Allowed, { pieces }: Dimension): FactValue | undefined {
  if (allowed.kind === 'set') {
    if (!allowed.stated || pieces.kind !== 'set') return undefined;
    return allowed.has.flatMap((index) => pieces.pieces[index]?.[0] ?? []).sort();
  }
  const [first] = allowed.pieces;
  if (first === undefined) return undefined;
  if (pieces.kind === 'spans') return pieces.pieces[first]?.example;
  return pieces.pieces[first]?.[0];
}

/** The literals that hold in a situation: what an encoding says about one situation can be compared with `decide`. */
export function assumptionsOf(situation: Situation, space: Space): Literal[] {
  return [...space.dimensions].flatMap(([id, { pieces, stated, at }]) => {
    const value = Object.hasOwn(situation, id) ? situation[id] : undefined;
    if (value === undefined) return [-stated];
    if (Array.isArray(value)) {
      const has = new Set(value.map((member: string) => pieceOf(pieces, member)));
      return [stated, ...at.map((each, index) => (has.has(index) ? each : -each))];
    }
    const piece = pieceOf(pieces, value);
    return [stated, ...at.map((each, index) => ((pieces.kind === 'spans' ? index <= piece : index === piece) ? each : -each))];
  });
}
