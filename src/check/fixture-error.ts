import { describeDimension, dimensionOf, parseQuantity, type Quantity } from '../measure/quantity.js';
import type { Dimension } from '../measure/units.js';
import type { Finding } from '../read/finding.js';
import { didYouMean } from '../read/nearest.js';
import { quoted } from '../read/quoted.js';

/** Why a fixture does not hold, or cannot be run. */
export interface Wrong {
  code: Finding['code'];
  /** Path within the fixture. */
  at: string[];
  message: string;
  help?: string | undefined;
}

/** Leaves a fixture that cannot be run. */
export class FixtureError extends Error {
  constructor(readonly wrong: Wrong) {
    super(wrong.message);
  }
}

/** @throws FixtureError when there is no such thing. */
export function known<T>(code: Finding['code'], what: string, id: string, things: ReadonlyMap<string, T>, at: string[]): T {
  const thing = things.get(id);
  if (thing === undefined)
    throw new FixtureError({ code, at, message: `unknown ${what} ${quoted(id)}`, help: didYouMean(id, things.keys()) });
  return thing;
}

/** @throws FixtureError when the text is no quantity, or one of another dimension than wanted. */
export function quantity(text: string, wanted: Dimension | 'any', at: string[]): Quantity {
  const parsed = parseQuantity(text);
  if (!parsed.ok)
    throw new FixtureError({
      code: 'E210',
      at,
      message: parsed.problem,
      help: wanted === 'any' ? 'write a number and a unit' : `expected ${describeDimension(wanted)}`,
    });
  const got = dimensionOf(parsed.value);
  if (wanted === 'any' || got === wanted) return parsed.value;
  throw new FixtureError({
    code: 'E308',
    at,
    message: `${quoted(text)} is ${describeDimension(got)}, expected ${describeDimension(wanted)}`,
    help: 'compare like with like',
  });
}
