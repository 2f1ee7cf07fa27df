import { dimensionOf, inBaseUnit, type Quantity } from './quantity.js';

/**
 * A0 of a hold at one temperature: seconds at 80 °C with the same effect, `time * 10^((T - 80) / 10)`.
 * Below 65 °C nothing counts. Source: ISO 15883-1:2006, Annex B (z = 10 K, lower integration limit 65 °C).
 *
 * @throws RangeError when an argument is not a temperature and a time.
 */
export function a0OfHold(temperature: Quantity, time: Quantity): Quantity {
  if (dimensionOf(temperature) !== 'temperature' || dimensionOf(time) !== 'time')
    throw new RangeError('A0 is worked out from a temperature and a time');
  const celsius = inBaseUnit(temperature);
  const value = celsius < 65 ? 0 : inBaseUnit(time) * 10 ** ((celsius - 80) / 10);
  return { value, unit: '{A0}' };
}
