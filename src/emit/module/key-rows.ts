import { type CutFact, countCells, setTest } from './cells.js';
import type { Literal, Row } from './rows.js';
import { bitsOf, mostClassesInABitSet } from './selections.js';

/** A row that names a few members of a wide enum: it is looked up by them, and the rest of it tested one by one. */
export interface KeyedRow {
  /** The cells of the wide enum that it names. */
  keys: number[];
  /** Fact, how it is tested (0 to 3 as of sets, 4 a bit set of cells), and what passes. */
  tests: [fact: number, op: number, passing: number][];
}

/** Fewer cells than this are no catalogue. */
const leastCells = 16;

/** The enum by which most rows can be looked up, if that leaves few rows for each of its members. */
export function keyFactOf(rows: readonly Row[], facts: ReadonlyMap<string, CutFact>): CutFact | undefined {
  const counts = new Map<string, number>();
  for (const row of rows)
    for (const fact of new Set(row.flatMap((each) => (isNaming(each) ? [each.fact] : []))))
      counts.set(fact, (counts.get(fact) ?? 0) + 1);
  const wide = [...counts].flatMap(([id, count]): [CutFact, number][] => {
    const fact = facts.get(id);
    return fact?.cells.kind === 'members' && countCells(fact.cells) >= leastCells && 2 * count > rows.length
      ? [[fact, count]]
      : [];
  });
  return wide.sort(([a, counted], [b, other]) => other - counted || a.index - b.index)[0]?.[0];
}

/** Only enums are tested for one of some members. */
function isNaming({ test, negated }: Literal): boolean {
  return !negated && test.kind === 'one-of';
}

/** A row as one to look up; `undefined` where it does not name few members or asks something that is not tested so. */
export function keyedRow(
  row: Row,
  key: CutFact,
  facts: ReadonlyMap<string, CutFact>,
  allowedCells: (fact: CutFact, literal: Literal) => ReadonlySet<number>,
): KeyedRow | undefined {
  const named = row.filter((each) => each.fact === key.fact.id);
  if (named.length !== 1 || named[0] === undefined) return undefined;
  const keys = [...allowedCells(key, named[0])];
  if (keys.length === 0 || 8 * keys.length > countCells(key.cells)) return undefined;
  const tests: KeyedRow['tests'] = [];
  for (const literal of row) {
    const fact = facts.get(literal.fact);
    if (fact === key) continue;
    if (fact === undefined || fact.cells.kind === 'answer') return undefined;
    if (fact.cells.kind === 'set') {
      if (fact.cells.classes.length > mostClassesInABitSet) return undefined;
      const { op, classes } = setTest(fact.cells.classes, literal.test, literal.negated);
      tests.push([fact.index, op, bitsOf(classes)]);
    } else {
      if (countCells(fact.cells) > 31) return undefined;
      tests.push([fact.index, 4, bitsOf([...allowedCells(fact, literal)])]);
    }
  }
  return { keys, tests };
}
