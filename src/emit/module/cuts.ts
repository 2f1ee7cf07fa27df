import type { Fact, Test } from '../../link/rulebook.js';
import { fromBaseUnit, inBaseUnit, leastOf } from '../../measure/quantity.js';

/** Where one cell of a number fact ends and the next begins. */
export interface Cut {
  /** In the base unit: the next cell holds what is at least (`after`: above) this. */
  value: number;
  after: boolean;
  /** The least number in the fact's own unit that the next cell holds. */
  from: number;
}

/** What a number fact may say in its own unit, both ends included. */
export interface Bounds {
  least: number;
  most: number;
}

type Compare = Extract<Test, { kind: 'compare' }>;

/** The cut that a comparison makes: it parts what passes from what does not. */
export function cutOf(fact: Fact, { op, value }: Compare): Cut {
  const after = op === 'above' || op === 'at-most';
  return { value, after, from: after ? firstAbove(fact, value) : firstAtLeast(fact, value) };
}

/** No quantity is larger in its own unit, as for all quantities that people write. */
const largest = 1e9;

/** What there can be of a fact, as the linker judges it. */
export function boundsOf(fact: Fact): Bounds {
  if (fact.type === 'count') return { least: 0, most: Number.MAX_SAFE_INTEGER };
  if (fact.type === 'date') return { least: Number.NEGATIVE_INFINITY, most: Number.POSITIVE_INFINITY };
  const { minimum, maximum, unit = '1' } = fact;
  const floor = leastOf(unit) === 0 ? 0 : -largest;
  return {
    least: minimum === undefined ? floor : Math.max(floor, firstAtLeast(fact, inBaseUnit(minimum))),
    most: maximum === undefined ? largest : Math.min(largest, before(firstAbove(fact, inBaseUnit(maximum)))),
  };
}

/** The least number of the fact's unit whose size in the base unit, rounded as all sizes are, is at least this. */
function firstAtLeast(fact: Fact, base: number): number {
  if (fact.type !== 'quantity') return Math.ceil(base);
  return first(fact.unit ?? '1', base, (size) => size >= base);
}

function firstAbove(fact: Fact, base: number): number {
  if (fact.type !== 'quantity') return Math.floor(base) + 1;
  return first(fact.unit ?? '1', base, (size) => size > base);
}

/** Bisects down to neighboring numbers: sizes only grow with the number, so there is one place where `passes` begins to hold. */
function first(unit: string, base: number, passes: (size: number) => boolean): number {
  const holds = (value: number) => passes(inBaseUnit({ value, unit }));
  const start = fromBaseUnit(base, unit).value;
  if (start === 0) return holds(0) ? 0 : Number.MIN_VALUE;
  let step = Math.abs(start) * 1e-12;
  let [low, high] = [start, start];
  while (holds(low)) {
    low -= step;
    step *= 2;
  }
  step = Math.abs(start) * 1e-12;
  while (!holds(high)) {
    high += step;
    step *= 2;
  }
  for (let middle = (low + high) / 2; middle !== low && middle !== high; middle = (low + high) / 2)
    if (holds(middle)) high = middle;
    else low = middle;
  return high;
}

/** The greatest number below one that is not 0. */
function before(value: number): number {
  const view = new DataView(new ArrayBuffer(8));
  view.setFloat64(0, value);
  view.setBigInt64(0, view.getBigInt64(0) + (value > 0 ? -1n : 1n));
  return view.getFloat64(0);
}
