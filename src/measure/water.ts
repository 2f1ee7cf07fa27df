import { dimensionOf, inBaseUnit, type Quantity } from './quantity.js';
import type { Dimension } from './units.js';

/** A class of hardness under the list that names it. */
export interface HardnessClass {
  list: string;
  name: string;
}

/**
 * What water of this hardness is called. Sources: United States Geological Survey, classes up to 60, 120 and 180 mg/L of
 * calcium carbonate; the German act on washing and cleaning agents (WRMG 2007, § 9), classes below 1.5 and up to 2.5 mmol/L.
 */
export function hardnessClasses(hardness: Quantity): HardnessClass[] {
  expect(hardness, 'water hardness');
  const milligrams = inBaseUnit(hardness);
  const millimoles = (value: number) => inBaseUnit({ value, unit: 'mmol{CaCO3}/L' });
  const us = milligrams <= 60 ? 'soft' : milligrams <= 120 ? 'moderately hard' : milligrams <= 180 ? 'hard' : 'very hard';
  const german =
    milligrams < millimoles(1.5) ? 'soft (weich)' : milligrams <= millimoles(2.5) ? 'medium (mittel)' : 'hard (hart)';
  return [
    { list: 'US Geological Survey', name: us },
    { list: 'Germany, WRMG § 9', name: german },
  ];
}

/** Temperature coefficient of the conductivity of dilute salt solutions, in % per K at 25 °C. Source: Standard Methods 2510 B. */
export const conductivityCoefficient: Quantity = { value: 1.91, unit: '%/K' };
export const conductivityReference: Quantity = { value: 25, unit: 'Cel' };

/**
 * The conductivity that a water would show at `reference` when it shows `conductivity` at `temperature`:
 * `C * (1 + a * (reference - 25)) / (1 + a * (T - 25))`. Source: Standard Methods for the Examination of Water and
 * Wastewater, 2510 B. For dilute salts between 0 and 40 °C; not for ultrapure water below about 1 µS/cm.
 *
 * @throws RangeError outside that range of temperature.
 */
export function conductivityAt(
  conductivity: Quantity,
  temperature: Quantity,
  reference = conductivityReference,
  coefficient = conductivityCoefficient,
): Quantity {
  expect(conductivity, 'conductivity');
  expect(coefficient, 'temperature coefficient');
  const share = (at: Quantity) => {
    expect(at, 'temperature');
    const celsius = inBaseUnit(at);
    if (celsius < 0 || celsius > 40) throw new RangeError('conductivity is corrected between 0 and 40 °C');
    const factor = 1 + (inBaseUnit(coefficient) / 100) * (celsius - 25);
    if (factor <= 0) throw new RangeError('the coefficient is too large');
    return factor;
  };
  return { value: (inBaseUnit(conductivity) * share(reference)) / share(temperature), unit: 'uS/cm' };
}

/**
 * How many whole cycles a softener serves between two regenerations: its capacity as a mass of calcium carbonate, divided by
 * what one cycle brings, `(hardness - left) * volume`. It follows from the definition of hardness; allow for the reserve that
 * the maker asks for.
 *
 * @throws RangeError when there is nothing to soften.
 */
export function cyclesPerRegeneration(hardness: Quantity, left: Quantity, volume: Quantity, capacity: Quantity): Quantity {
  expect(hardness, 'water hardness');
  expect(left, 'water hardness');
  expect(volume, 'volume');
  expect(capacity, 'mass');
  const grams = ((inBaseUnit(hardness) - inBaseUnit(left)) * inBaseUnit(volume)) / 1e6;
  if (!(grams > 0)) throw new RangeError('a softener is for water that is harder than what it leaves');
  return wholeCycles(inBaseUnit(capacity) / grams);
}

/** How many whole cycles a stock of salt lasts when each regeneration takes `salt` and serves `cycles`. */
export function cyclesOfSalt(stock: Quantity, salt: Quantity, cycles: Quantity): Quantity {
  expect(stock, 'mass');
  expect(salt, 'mass');
  expect(cycles, 'cycles');
  if (inBaseUnit(salt) === 0) throw new RangeError('the salt of a regeneration is above zero');
  return wholeCycles(Math.floor(inBaseUnit(stock) / inBaseUnit(salt)) * inBaseUnit(cycles));
}

/** What one cycle takes of a product that is dosed by volume. */
export function detergentPerCycle(dose: Quantity, volume: Quantity): Quantity {
  expect(dose, 'dose');
  expect(volume, 'volume');
  return { value: (inBaseUnit(dose) * inBaseUnit(volume)) / 1000, unit: 'mL' };
}

/**
 * How many whole cycles a container lasts.
 *
 * @throws RangeError when a cycle takes nothing.
 */
export function cyclesOfContainer(container: Quantity, perCycle: Quantity): Quantity {
  expect(container, 'volume');
  expect(perCycle, 'volume');
  if (inBaseUnit(perCycle) === 0) throw new RangeError('what a cycle takes is above zero');
  return wholeCycles(inBaseUnit(container) / inBaseUnit(perCycle));
}

/** Rounds down, but not for the sake of a binary fraction: 30 cycles are 30, not 29.999999999. */
function wholeCycles(cycles: number): Quantity {
  return { value: Math.floor(Number(cycles.toPrecision(9))), unit: '{cycles}' };
}

function expect(quantity: Quantity, dimension: Dimension): void {
  if (dimensionOf(quantity) !== dimension) throw new RangeError(`expected ${dimension}, got ${dimensionOf(quantity)}`);
}
