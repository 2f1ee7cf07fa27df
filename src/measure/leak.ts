import { dimensionOf, inBaseUnit, type Quantity } from './quantity.js';

/**
 * Mean rise of pressure in a closed chamber under vacuum: `(end - start) / time`. Both pressures are absolute or both gauge.
 * Source: EN 285 and HTM 2010 Part 3, vacuum leak test (at most 1.3 mbar a minute over 10 minutes).
 *
 * @throws RangeError when the arguments are not two pressures and a time above zero.
 */
export function leakRate(start: Quantity, end: Quantity, time: Quantity): Quantity {
  if (dimensionOf(start) !== 'pressure' || dimensionOf(end) !== 'pressure' || dimensionOf(time) !== 'time')
    throw new RangeError('a leak rate is worked out from two pressures and a time');
  if (inBaseUnit(time) === 0) throw new RangeError('the time of a leak test is above zero');
  return { value: (inBaseUnit(end) - inBaseUnit(start)) / (inBaseUnit(time) / 60), unit: 'kPa/min' };
}
