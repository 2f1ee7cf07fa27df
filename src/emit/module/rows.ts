import type { Condition, Fact, Test } from '../../link/rulebook.js';

/** One test of a row, or its opposite. Equal ones are one object. */
export interface Literal {
  key: number;
  fact: string;
  test: Test;
  negated: boolean;
}

/** Literals that must all hold. */
export type Row = readonly Literal[];

/** No rule takes more rows; one that would is tested directly instead. */
const mostRows = 48;

/**
 * Puts conditions into rows of which one must hold. In strong Kleene logic, too, a condition is true (or not false) where one of its
 * rows is: a literal about a fact that is not stated is unknown, whichever way round, and so literals that contradict each other
 * or always hold are kept.
 */
export class Rows {
  private readonly literals = new Map<string, Literal>();
  private readonly guards = new Map<string, (readonly Row[] | undefined)[]>();

  constructor(private readonly facts: ReadonlyMap<string, Fact>) {}

  /** The rows of a condition, or `undefined` where there would be too many. */
  of(condition: Condition, negated = false): readonly Row[] | undefined {
    switch (condition.kind) {
      case 'not':
        return this.of(condition.of, !negated);
      case 'all':
      case 'any':
        return (condition.kind === 'all') !== negated
          ? this.product(condition.of.map((each) => () => this.of(each, negated)))
          : this.union(condition.of.map((each) => this.of(each, negated)));
      case 'test': {
        const itself = [[this.literal(condition.fact, condition.test, negated)]];
        const guard = this.guard(condition.fact, negated);
        return negated ? this.union([guard, itself]) : this.product([() => guard, () => itself]);
      }
    }
  }

  /** A test counts only where the `only-when` of its fact holds. */
  private guard(id: string, negated: boolean): readonly Row[] | undefined {
    const condition = this.facts.get(id)?.onlyWhen;
    if (condition === undefined) return negated ? [] : [[]];
    const known = this.guards.get(id) ?? [this.of(condition, false), this.of(condition, true)];
    this.guards.set(id, known);
    return known[Number(negated)];
  }

  private literal(fact: string, test: Test, negated: boolean): Literal {
    const name = JSON.stringify([fact, negated, test.kind, test.kind === 'compare' ? [test.op, test.value] : test.members]);
    const known = this.literals.get(name);
    if (known !== undefined) return known;
    const literal = { key: this.literals.size, fact, test, negated };
    this.literals.set(name, literal);
    return literal;
  }

  private union(parts: readonly (readonly Row[] | undefined)[]): readonly Row[] | undefined {
    let rows: readonly Row[] = [];
    for (const part of parts) {
      if (part === undefined) return undefined;
      rows = rows.length === 0 ? part : [...rows, ...part];
      if (rows.length > 4 * mostRows) return undefined;
    }
    return shortened(rows);
  }

  private product(parts: readonly (() => readonly Row[] | undefined)[]): readonly Row[] | undefined {
    let rows: readonly Row[] = [[]];
    for (const each of parts) {
      const part = each();
      if (part === undefined || rows.length * part.length > 8 * mostRows) return undefined;
      const longer = rows.flatMap((row) => part.map((more) => joined(row, more)));
      const short = shortened(longer);
      if (short === undefined) return undefined;
      rows = short;
    }
    return rows;
  }
}

function joined(row: Row, more: Row): Row {
  return [...new Set([...row, ...more])].sort((a, b) => a.key - b.key);
}

/** Leaves out rows that say no more than a shorter one; the rest are in a fixed order. */
function shortened(rows: readonly Row[]): readonly Row[] | undefined {
  if (rows.length < 2) return rows;
  const kept: Set<Literal>[] = [];
  const short: Row[] = [];
  for (const row of [...rows].sort((a, b) => a.length - b.length)) {
    const own = new Set(row);
    if (kept.some((other) => isWithin(other, own))) continue;
    kept.push(own);
    short.push(row);
  }
  return short.length > mostRows ? undefined : short;
}

function isWithin(part: ReadonlySet<Literal>, whole: ReadonlySet<Literal>): boolean {
  for (const each of part) if (!whole.has(each)) return false;
  return true;
}
