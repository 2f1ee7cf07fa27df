import { isHollow, readFactValue } from '../link/read-values.js';
import type { FactValue, Rulebook } from '../link/rulebook.js';
import { type Interval, parseInterval } from '../measure/interval.js';
import { describeDimension, dimensionOf, parseQuantity, type Quantity } from '../measure/quantity.js';
import type { Dimension } from '../measure/units.js';
import type { Finding } from '../read/finding.js';
import { didYouMean } from '../read/nearest.js';
import { quoted } from '../read/quoted.js';
import type { FixtureDocument } from '../read/types.gen.js';

export type Fixture = FixtureDocument['fixtures'][string];
export type FixtureThat<P extends Fixture['prove']> = Extract<Fixture, { prove: P }>;

/** What is wrong with a fixture, or what the rules do otherwise than it says. */
export interface Wrong {
  code: Finding['code'];
  /** Path within the fixture. */
  at: (string | number)[];
  message: string;
  help?: string | undefined;
}

/** Thrown where a part of a fixture cannot be read. */
export class FixtureError extends Error {
  constructor(readonly wrong: Wrong) {
    super(wrong.message);
  }
}

/** The thing with that id. @throws FixtureError when there is none. */
export function known<T>(
  code: Finding['code'],
  what: string,
  id: string,
  things: ReadonlyMap<string, T>,
  at: (string | number)[],
): T {
  const thing = things.get(id);
  if (thing === undefined)
    throw new FixtureError({ code, at, message: `unknown ${what} ${quoted(id)}`, help: didYouMean(id, things.keys()) });
  return thing;
}

/** A quantity of the dimension wanted. @throws FixtureError when the text is something else. */
export function readPublished(text: string, wanted: Dimension | 'any', at: (string | number)[]): Quantity {
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

/** An interval. @throws FixtureError when the text is none. */
export function readPublishedInterval(text: string, at: (string | number)[]): Interval {
  const parsed = parseInterval(text);
  if (parsed.ok) return parsed.value;
  throw new FixtureError({ code: 'E210', at, message: parsed.problem, help: 'write it as `1 wk or 20 cycles`' });
}

/** Facts as decide takes them; those that were themselves written wrongly are left out. */
export function readGiven(raw: Readonly<Record<string, unknown>>, rulebook: Rulebook, under: string): Record<string, FactValue> {
  const given: Record<string, FactValue> = {};
  for (const [id, value] of Object.entries(raw)) {
    const fact = known('E301', 'fact', id, rulebook.facts, [under, id]);
    if (isHollow(fact)) continue;
    const read = readFactValue(fact, value);
    if (!('value' in read)) throw new FixtureError({ code: read.code, message: read.message, help: read.help, at: [under, id] });
    given[id] = read.value;
  }
  return given;
}
