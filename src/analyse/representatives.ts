import type { Answering } from '../decide/decide.js';
import type { FactValue, Situation } from '../link/rulebook.js';
import { Encoder, testsOfDecision } from './encode.js';
import { Formulas } from './formulas.js';
import { testsOf } from './pieces.js';
import type { Literal } from './solver.js';
import { type Dimension, type Space, spaceOf } from './space.js';

/** Situations that stand for all: what every other evaluator is compared on. */
export interface Representatives {
  situations: Situation[];
  /** How many cells of the decision they stand for: combinations of pieces, each fact's also `not stated`. */
  cells: number;
  /**
   * `every cell`: one situation for each. `every answer`: one situation for each combination of rules that are true, unknown and false,
   * and for each rule every cell of its own facts, or where those are too many, every value of each fact beside a situation in which the
   * rule is true, one in which it is unknown and one in which it is false. `some`: there are more combinations than the limit.
   */
  extent: 'every cell' | 'every answer' | 'some';
}

/** Limits of what is listed. */
export interface MostRepresentatives {
  /** Cells up to which every one is listed. */
  cells: number;
  /** Combinations of rules. */
  combinations: number;
}

export const usualMost: MostRepresentatives = { cells: 5000, combinations: 200_000 };

/** One situation for each cell of a decision, or for each answer that it can give in each way. Values are in base units. */
export function representativesOf(rulebook: Answering, decision: string, most: MostRepresentatives = usualMost): Representatives {
  const space = spaceOf(testsOfDecision(rulebook, decision), [rulebook.facts], new Formulas());
  const all = [...space.dimensions.values()];
  const cells = all.reduce((product, each) => product * countOf(each), 1);
  if (cells <= most.cells) return { situations: product(all), cells, extent: 'every cell' };
  const combinations = combinationsOf(rulebook, decision, space, most.combinations);
  const byRule = (rulebook.decisions.get(decision)?.rules ?? []).flatMap(({ when }, index) => {
    const named = new Set(testsOf([when], rulebook.facts).map(({ fact }) => fact));
    const own = all.filter(({ id }) => named.has(id));
    const ownCells = own.reduce((count, each) => count * countOf(each), 1);
    return ownCells <= most.cells ? product(own) : around(combinations.bases[index] ?? [], own);
  });
  const situations = [...new Map([...byRule, ...combinations.situations].map((each) => [JSON.stringify(each), each])).values()];
  return { situations, cells, extent: combinations.complete ? 'every answer' : 'some' };
}

function countOf({ pieces }: Dimension): number {
  return pieces.kind === 'set' ? 2 ** pieces.pieces.length + 1 : pieces.pieces.length + 1;
}

/** Every value of a fact that stands for a piece. */
function valuesOf({ pieces }: Dimension): (FactValue | undefined)[] {
  if (pieces.kind === 'spans') return [undefined, ...pieces.pieces.map(({ example }) => example)];
  if (pieces.kind === 'members')
    return [undefined, ...pieces.pieces.flatMap(([member]) => (member === undefined ? [] : [member]))];
  const firsts = pieces.pieces.flatMap(([member]) => member ?? []);
  return [
    undefined,
    ...Array.from({ length: 2 ** firsts.length }, (_, bits) => firsts.filter((_, index) => (bits >> index) & 1).sort()),
  ];
}

/** Some situations with one fact after the other at each of its values. */
function around(bases: readonly Situation[], dimensions: readonly Dimension[]): Situation[] {
  return bases.flatMap((base) =>
    dimensions.flatMap((dimension) =>
      valuesOf(dimension).map((value) => {
        const { [dimension.id]: _, ...others } = base;
        return value === undefined ? others : { ...others, [dimension.id]: value };
      }),
    ),
  );
}

function product(dimensions: readonly Dimension[]): Situation[] {
  let situations: Record<string, FactValue>[] = [{}];
  for (const dimension of dimensions)
    situations = situations.flatMap((situation) =>
      valuesOf(dimension).map((value) => (value === undefined ? situation : { ...situation, [dimension.id]: value })),
    );
  return situations;
}

/** A value, or part of one, that a fact may take: what it makes true and false, and what it adds to the situation. */
interface Choice {
  values: Map<Literal, boolean>;
  adds: (situation: Record<string, FactValue>) => Record<string, FactValue>;
}

/**
 * One situation for each combination of rules that are true, unknown and false. The facts are filled in one after the other; what is
 * left of all rules is a state, and of situations that lead to the same state one goes on.
 */
function combinationsOf(
  rulebook: Answering,
  decision: string,
  space: Space,
  most: number,
): { situations: Situation[]; bases: Situation[][]; complete: boolean } {
  const { circuit } = space;
  if (!(circuit instanceof Formulas)) throw new TypeError('a space of formulas is needed');
  const { rules } = new Encoder(space, rulebook).decision(decision);
  const start = rules.flatMap(({ certain, possible }) => [certain, possible]);
  let states = new Map([[start.join(' '), { left: start, situation: {} as Record<string, FactValue> }]]);
  let complete = true;
  for (const choices of [...space.dimensions.values()].flatMap(stepsOf)) {
    const next: typeof states = new Map();
    for (const { values, adds } of choices) {
      const fill = circuit.fillIn(values);
      for (const { left, situation } of states.values()) {
        const filled = left.map(fill);
        const key = filled.join(' ');
        if (next.has(key)) continue;
        if (next.size >= most) complete = false;
        else next.set(key, { left: filled, situation: adds(situation) });
      }
    }
    states = next;
  }
  const found = [...states.values()];
  // By rule: a situation in which it is true, one in which it is unknown, one in which it is false.
  const bases = rules.map((_, index) => {
    const byTruth = new Map(found.map(({ left, situation }) => [left.slice(2 * index, 2 * index + 2).join(' '), situation]));
    return [...byTruth.values()];
  });
  return { situations: found.map(({ situation }) => situation), bases, complete };
}

/** A fact as steps: one, or of a set one for being stated and one a piece. */
function stepsOf({ id, pieces, stated, at }: Dimension): Choice[][] {
  const none = new Map<Literal, boolean>([[stated, false], ...at.map((each): [Literal, boolean] => [each, false])]);
  const notStated: Choice = { values: none, adds: (situation) => situation };
  if (pieces.kind === 'set')
    return [
      [notStated, { values: new Map([[stated, true]]), adds: (situation) => ({ ...situation, [id]: [] }) }],
      ...pieces.pieces.map(([member = ''], index): Choice[] => [
        { values: new Map([[at[index] ?? 0, false]]), adds: (situation) => situation },
        {
          values: new Map([[at[index] ?? 0, true]]),
          adds: (situation) => {
            const before = situation[id];
            return Array.isArray(before) ? { ...situation, [id]: [...before, member].sort() } : situation;
          },
        },
      ]),
    ];
  return [
    [
      notStated,
      ...pieces.pieces.map((piece, index): Choice => {
        const value = 'example' in piece ? piece.example : piece[0];
        const values = new Map<Literal, boolean>([
          [stated, true],
          ...at.map((each, other): [Literal, boolean] => [each, pieces.kind === 'spans' ? other <= index : other === index]),
        ]);
        return { values, adds: (situation) => (value === undefined ? situation : { ...situation, [id]: value }) };
      }),
    ],
  ];
}
