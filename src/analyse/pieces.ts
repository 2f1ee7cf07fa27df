import type { Comparison, Condition, Fact, FactValue, Test } from '../link/rulebook.js';
import { fromBaseUnit, inBaseUnit, leastOf } from '../measure/quantity.js';

/** An end of a range. */
export interface Bound {
  value: number;
  included: boolean;
  /** As the rule writes it, where a rule cuts here; not where values end by themselves. */
  shown?: string;
}

/** A range of numbers in the base unit, with the values that stand for it: the same for every test of the rules. */
export interface Span {
  /** Absent where there is no bound. */
  least?: Bound;
  most?: Bound;
  /** A short number within. */
  example: number;
}

/**
 * The pieces into which the tests of the rules cut what a fact can say. Of a set, members that no test tells apart are one piece,
 * which is in the set when one of them is; of all other facts, a value falls into exactly one piece. That a fact is not stated is
 * a piece of its own and not listed.
 */
export type Pieces =
  | { kind: 'members'; pieces: (string | boolean)[][] }
  | { kind: 'set'; pieces: string[][] }
  | { kind: 'spans'; pieces: Span[] };

/** A test on a fact, wherever a condition has it. */
export interface FactTest {
  fact: string;
  test: Test;
}

/** The tests of conditions, with those of the `only-when` of their facts. */
export function testsOf(conditions: Iterable<Condition>, facts: ReadonlyMap<string, Fact>): FactTest[] {
  const found: FactTest[] = [];
  const guarded = new Set<string>();
  const walk = (condition: Condition): void => {
    if (condition.kind === 'not') walk(condition.of);
    else if (condition.kind !== 'test') for (const each of condition.of) walk(each);
    if (condition.kind !== 'test') return;
    found.push(condition);
    const guard = facts.get(condition.fact)?.onlyWhen;
    if (guard === undefined || guarded.has(condition.fact)) return;
    guarded.add(condition.fact);
    walk(guard);
  };
  for (const condition of conditions) walk(condition);
  return found;
}

/** Cuts what a fact can say by the tests on it. `facts` is the fact as each of the rulebooks compared has it. */
export function cutPieces(facts: readonly Fact[], tests: readonly Test[]): Pieces {
  const [fact] = facts;
  if (fact === undefined) throw new RangeError('no fact to cut');
  switch (fact.type) {
    case 'answer':
      // Each for itself: what a caller states counts only where it is possible, and that is asked of each outcome.
      return { kind: 'members', pieces: [...new Set(facts.flatMap((each) => each.members))].map((member) => [member]) };
    case 'enum':
    case 'boolean': {
      const members: (string | boolean)[] =
        fact.type === 'boolean' ? [true, false] : [...new Set(facts.flatMap((each) => each.members))];
      return { kind: 'members', pieces: groupAlike(members, tests) };
    }
    case 'set': {
      const members = [...new Set(facts.flatMap((each) => each.members))];
      return { kind: 'set', pieces: groupAlike(members, tests) };
    }
    default:
      return { kind: 'spans', pieces: cutSpans(facts, tests) };
  }
}

/** Whether a member alone passes a test. */
export function passesAlone(member: string | boolean, test: Test): boolean {
  if (test.kind === 'compare') return false;
  const named = test.members.some((each) => each === member);
  return test.kind === 'none-of' ? !named : named;
}

/** Members are alike when every test names all of them or none; under `all-of` of a set each counts for itself. */
function groupAlike<M extends string | boolean>(members: readonly M[], tests: readonly Test[]): M[][] {
  const namedBy = new Map<string | boolean, (number | string)[]>(members.map((member) => [member, []]));
  tests.forEach((test, index) => {
    if (test.kind !== 'compare')
      for (const member of new Set(test.members)) namedBy.get(member)?.push(test.kind === 'all-of' ? `${member}` : index);
  });
  const groups = new Map<string, M[]>();
  for (const member of members) {
    const key = JSON.stringify(namedBy.get(member));
    const group = groups.get(key);
    if (group === undefined) groups.set(key, [member]);
    else group.push(member);
  }
  return [...groups.values()];
}

type Compare = Extract<Test, { kind: 'compare' }>;

function cutSpans(facts: readonly Fact[], tests: readonly Test[]): Span[] {
  const comparing = tests.filter((test): test is Compare => test.kind === 'compare');
  const comparisons = [...new Map(comparing.map((test) => [`${test.op} ${test.value}`, test])).values()];
  const ranges = rangesOf(facts);
  const cuts = [...new Map(comparing.map(({ value, shown }) => [value, shown]))].sort(([a], [b]) => a - b);
  const spans: Span[] = [];
  const [fact] = facts;
  const add = (span: Omit<Span, 'example'>): void => {
    for (const range of ranges) addWithin(narrow(span, range));
  };
  const addWithin = (within: Omit<Span, 'example'>): void => {
    const example = fact && exampleWithin(within, fact);
    if (example === undefined) return;
    const last = spans.at(-1);
    const alike = last !== undefined && comparisons.every((test) => compares(last.example, test) === compares(example, test));
    if (!alike) spans.push({ ...within, example });
    else {
      // The two are one piece: no test tells them apart.
      const { most: _, ...start } = last;
      const joined = { ...start, ...(within.most !== undefined && { most: within.most }) };
      const whole = fact && exampleWithin(joined, fact);
      const isValue = whole !== undefined && ranges.some(({ least, most }) => least <= whole && whole <= most);
      spans[spans.length - 1] = { ...joined, example: isValue ? whole : last.example };
    }
  };
  const bound = ([value, shown]: [number, string], included: boolean): Bound => ({ value, included, shown });
  cuts.forEach((cut, index) => {
    const before = cuts[index - 1];
    add({ ...(before !== undefined && { least: bound(before, false) }), most: bound(cut, false) });
    add({ least: bound(cut, true), most: bound(cut, true) });
  });
  const last = cuts.at(-1);
  add(last === undefined ? {} : { least: bound(last, false) });
  return spans;
}

interface Range {
  least: number;
  most: number;
}

/**
 * What a fact's values lie between in the base unit, in order: what it states, or what there can be at all. Those of rulebooks that
 * overlap are one; a value between two that do not can be in neither rulebook.
 */
function rangesOf(facts: readonly Fact[]): Range[] {
  const each = facts.map((fact) => ({
    least: fact.minimum === undefined ? leastValueOf(fact) : inBaseUnit(fact.minimum),
    most: fact.maximum === undefined ? Number.POSITIVE_INFINITY : inBaseUnit(fact.maximum),
  }));
  const ranges: Range[] = [];
  for (const range of each.sort((a, b) => (a.least < b.least ? -1 : 1))) {
    const last = ranges.at(-1);
    if (last === undefined || range.least > last.most) ranges.push(range);
    else last.most = Math.max(last.most, range.most);
  }
  return ranges;
}

function leastValueOf({ type, unit = '1' }: Fact): number {
  return type === 'date' ? Number.NEGATIVE_INFINITY : leastOf(unit);
}

function narrow(span: Omit<Span, 'example'>, bounds: Range): Omit<Span, 'example'> {
  const least =
    bounds.least > (span.least?.value ?? Number.NEGATIVE_INFINITY) ? { value: bounds.least, included: true } : span.least;
  const most = bounds.most < (span.most?.value ?? Number.POSITIVE_INFINITY) ? { value: bounds.most, included: true } : span.most;
  return {
    ...(least !== undefined && Number.isFinite(least.value) && { least }),
    ...(most !== undefined && { most }),
  };
}

/** Whether a number passes a comparison. */
export function compares(value: number, { op, value: bound }: { op: Comparison; value: number }): boolean {
  switch (op) {
    case 'at-least':
      return value >= bound;
    case 'at-most':
      return value <= bound;
    case 'above':
      return value > bound;
    case 'below':
      return value < bound;
  }
}

/** Whether a number, in the base unit, lies within a range. */
export function isInSpan(value: number, { least, most }: Omit<Span, 'example'>): boolean {
  const above = least === undefined || value > least.value || (least.included && value === least.value);
  const below = most === undefined || value < most.value || (most.included && value === most.value);
  return above && below;
}

/**
 * A short number of the fact's unit within a range, in the base unit; `undefined` where there is none. Counts and dates are whole.
 * Each is tested against the range itself, since the way to another unit and back rounds.
 */
function exampleWithin(span: Omit<Span, 'example'>, fact: Fact): number | undefined {
  const unit = fact.type === 'quantity' ? fact.unit : undefined;
  const toBase = (value: number) => (unit === undefined ? value : inBaseUnit({ value, unit }));
  const fromBase = (value: number) => (unit === undefined ? value : fromBaseUnit(value, unit).value);
  const low = span.least && fromBase(span.least.value);
  const high = span.most && fromBase(span.most.value);
  if (low === undefined && high === undefined) return fact.type === 'date' ? someDay : toBase(1);
  const isWhole = unit === undefined;
  const smallest = isWhole ? 1 : 1e-9;
  const width = low !== undefined && high !== undefined ? high - low : Math.max(1, Math.abs(low ?? high ?? 1));
  for (let step = 10 ** Math.floor(Math.log10(Math.max(width, smallest))); step >= smallest * 0.99; step /= 10) {
    const start = low === undefined ? Math.ceil((high ?? 0) / step) - 1 : Math.floor(low / step) + 1;
    const candidates = low === undefined ? [start + 1, start, start - 1] : [start - 1, start, start + 1];
    for (const each of candidates) {
      const value = toBase(Number((each * step).toPrecision(12)));
      if (isInSpan(value, span)) return value;
    }
    if (isWhole && step <= 1) return undefined;
  }
  const ends = [span.least, span.most].flatMap((end) => (end?.included ? [end.value] : []));
  const between = span.least && span.most ? (span.least.value + span.most.value) / 2 : undefined;
  return [...ends, ...(between === undefined ? [] : [between])].find((value) => isInSpan(value, span));
}

/** 2026-01-01 as a day number: an example of a date where no test cuts dates. */
const someDay = 20_454;

/** Which piece a value falls into; -1 where it is none of them. Of a set, this is asked of each member. */
export function pieceOf(pieces: Pieces, value: FactValue): number {
  if (pieces.kind === 'spans') return pieces.pieces.findIndex((span) => isInSpan(Number(value), span));
  return pieces.pieces.findIndex((members) => members.some((each) => each === value));
}
