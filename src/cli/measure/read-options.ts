import { calculations, type Given, runCalculation } from '../../measure/calculations.js';
import { type Counting, countings } from '../../measure/count-readings.js';
import type { Band } from '../../measure/hold.js';
import { describeDimension, dimensionOf, inBaseUnit, parseQuantity, type Quantity, writtenUnit } from '../../measure/quantity.js';
import { type Dimension, unitNames, units } from '../../measure/units.js';
import { didYouMean } from '../../read/nearest.js';
import { quoted, quotedList } from '../../read/quoted.js';
import { BadUse } from '../bad-use.js';

/** What was given as options, by name. */
export type Options = Readonly<Record<string, string | boolean | undefined>>;

/** @throws BadUse when the text is no quantity of this dimension. */
export function readQuantity(text: string, dimension: Dimension | 'any', name: string): Quantity {
  const parsed = parseQuantity(text);
  if (!parsed.ok) {
    const written = units
      .filter((unit) => dimension === 'any' || unit.dimension === dimension)
      .map(({ ucum }) => writtenUnit(ucum));
    const near = parsed.unknownUnit === undefined ? undefined : didYouMean(parsed.unknownUnit, unitNames());
    throw new BadUse(`${name}: ${parsed.problem}`, near ?? `units are ${quotedList(written)}`);
  }
  const got = dimensionOf(parsed.value);
  if (dimension === 'any' || got === dimension) return parsed.value;
  throw new BadUse(`${name}: ${quoted(text)} is ${describeDimension(got)}, expected ${describeDimension(dimension)}`);
}

/** An option that need not be there. */
export function optionalQuantity(options: Options, key: string, dimension: Dimension): Quantity | undefined {
  const text = options[key];
  return typeof text === 'string' ? readQuantity(text, dimension, `--${kebab(key)}`) : undefined;
}

/** @throws BadUse when the option is missing. */
export function requiredQuantity(options: Options, key: string, dimension: Dimension): Quantity {
  const quantity = optionalQuantity(options, key, dimension);
  if (quantity === undefined) throw new BadUse(`--${kebab(key)} is missing`, 'see `--help` for an example');
  return quantity;
}

/**
 * Runs a calculation of the registry; of what is undefined it is told nothing.
 *
 * @throws BadUse where nothing can be worked out.
 */
export function calculate(name: string, given: Readonly<Record<string, Quantity | undefined>>): Quantity {
  const calculation = calculations[name];
  if (calculation === undefined) throw new RangeError(`no calculation ${name}`);
  const stated: Given = Object.fromEntries(
    Object.entries(given).flatMap(([key, quantity]) => (quantity === undefined ? [] : [[key, [quantity]]])),
  );
  try {
    return runCalculation(calculation, stated);
  } catch (error) {
    if (error instanceof RangeError) throw new BadUse(error.message);
    throw error;
  }
}

/** How readings are counted: as asked, or by the lower of two. */
export function readCounting({ counting = 'lower' }: Options): Counting {
  const known = Object.keys(countings) as Counting[];
  const found = known.find((each) => each === counting);
  if (found === undefined) throw new BadUse(`unknown counting ${quoted(String(counting))}`, `ways are ${quotedList(known)}`);
  return found;
}

/** The band of a hold: `--from` with `--to` or with `--band`, its width. */
export function readBand(options: Options): Band | undefined {
  const [from, to] = [optionalQuantity(options, 'from', 'temperature'), optionalQuantity(options, 'to', 'temperature')];
  const width = optionalQuantity(options, 'band', 'temperature difference');
  if (from === undefined && to === undefined && width === undefined) return undefined;
  const help = 'write for example `--from "134 °C" --band "3 K"`';
  if (from === undefined || (to === undefined) === (width === undefined))
    throw new BadUse('a band is stated by --from and one of --to and --band', help);
  const start = inBaseUnit(from);
  const end = to === undefined ? Number((start + (width === undefined ? 0 : inBaseUnit(width))).toFixed(9)) : inBaseUnit(to);
  if (!(end > start)) throw new BadUse('a band ends above where it starts', help);
  return { from: start, to: end };
}

function kebab(key: string): string {
  return key.replace(/[A-Z]/g, (letter) => `-${letter.toLowerCase()}`);
}
