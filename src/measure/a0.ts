import { type Counting, countReadings } from './count-readings.js';
import { dimensionOf, inBaseUnit, type Quantity } from './quantity.js';

/**
 * A0 of a hold at one temperature: seconds at 80 °C with the same effect, `time * 10^((T - 80) / 10)`.
 * Below 65 °C nothing counts; at 65 °C it does. Source: ISO 15883-1:2006, Annex B (z = 10 K, lower integration limit 65 °C).
 *
 * @throws RangeError when an argument is not a temperature and a time.
 */
export function a0OfHold(temperature: Quantity, time: Quantity): Quantity {
  if (dimensionOf(temperature) !== 'temperature' || dimensionOf(time) !== 'time')
    throw new RangeError('A0 is worked out from a temperature and a time');
  return { value: inBaseUnit(time) * a0Rate(inBaseUnit(temperature)), unit: '{A0}' };
}

/** A0 of readings in °C at moments in seconds: the sum over all steps, counted as said. Source: as for a hold. */
export function a0OfReadings(seconds: readonly number[], celsius: readonly number[], counting: Counting): Quantity {
  return { value: countReadings(seconds, celsius.map(a0Rate), counting), unit: '{A0}' };
}

function a0Rate(celsius: number): number {
  return celsius < 65 ? 0 : 10 ** ((celsius - 80) / 10);
}
