import { type Counting, countReadings } from './count-readings.js';
import { dimensionOf, inBaseUnit, type Quantity } from './quantity.js';

/**
 * 121.1 °C, which most of the literature uses for F0. Others use 121 °C (European Pharmacopoeia 5.1.5) or 121.11 °C (250 °F);
 * F0 differs by 2.6 % between the first and the last, so every result says which was used.
 */
export const f0Reference: Quantity = { value: 121.1, unit: 'Cel' };
/** z of moist heat: F0 has this one by definition (European Pharmacopoeia 5.1.5; 21 CFR 212.3, proposed 1976). */
export const moistHeatZ: Quantity = { value: 10, unit: 'K' };
/** z of dry heat, with 170 °C as reference for sterilizing (FH). Source: European Pharmacopoeia 5.1.5 and USP 1229.8. */
export const dryHeatZ: Quantity = { value: 20, unit: 'K' };
export const dryHeatReference: Quantity = { value: 170, unit: 'Cel' };

/**
 * F(T, z): the time at `reference` with the same effect as `time` at `temperature`, `time * 10^((T - reference) / z)`.
 * Source: European Pharmacopoeia 5.1.5. Good for moist and for dry heat, each with its z.
 *
 * @throws RangeError when the quantities are not two temperatures, a time and a temperature difference above zero.
 */
export function equivalentTime(temperature: Quantity, time: Quantity, reference: Quantity, z: Quantity): Quantity {
  if (dimensionOf(time) !== 'time') throw new RangeError('an equivalent time is worked out from a time');
  return { value: inBaseUnit(time) * lethalRate(inBaseUnit(temperature), reference, z), unit: 's' };
}

/**
 * F0 of a hold in saturated steam, in minutes at `reference` (z = 10 K). It counts nothing but heat: without steam, in air or
 * in a superheated chamber, the same temperature does much less. Source: European Pharmacopoeia 5.1.5.
 */
export function f0OfHold(temperature: Quantity, time: Quantity, reference = f0Reference): Quantity {
  return { value: inBaseUnit(equivalentTime(temperature, time, reference, moistHeatZ)) / 60, unit: 'min{F0}' };
}

/**
 * F(T, z) of readings in °C at moments in seconds: the sum over all steps, counted as said, as a time at `reference`. There is
 * no lower limit. Source: European Pharmacopoeia 5.1.5.
 */
export function equivalentTimeOfReadings(
  seconds: readonly number[],
  celsius: readonly number[],
  counting: Counting,
  reference: Quantity,
  z: Quantity,
): Quantity {
  const rates = celsius.map((each) => lethalRate(each, reference, z));
  return { value: countReadings(seconds, rates, counting), unit: 's' };
}

/** F0 of readings: the same with z = 10 K, in minutes. */
export function f0OfReadings(
  seconds: readonly number[],
  celsius: readonly number[],
  counting: Counting,
  reference = f0Reference,
): Quantity {
  const time = equivalentTimeOfReadings(seconds, celsius, counting, reference, moistHeatZ);
  return { value: time.value / 60, unit: 'min{F0}' };
}

/**
 * By how many powers of ten a population falls in `time`, when `dValue` is the time for one. Source: ISO 11138-1, D value;
 * survivor curve taken as a straight line.
 *
 * @throws RangeError when an argument is not a time, or the D value is zero.
 */
export function logReduction(dValue: Quantity, time: Quantity): Quantity {
  if (dimensionOf(dValue) !== 'time' || dimensionOf(time) !== 'time') throw new RangeError('a D value is a time');
  if (inBaseUnit(dValue) === 0) throw new RangeError('a D value is above zero');
  return { value: inBaseUnit(time) / inBaseUnit(dValue), unit: '{log10}' };
}

function lethalRate(celsius: number, reference: Quantity, z: Quantity): number {
  if (dimensionOf(reference) !== 'temperature') throw new RangeError('the reference is a temperature');
  if (dimensionOf(z) !== 'temperature difference' || inBaseUnit(z) <= 0)
    throw new RangeError('z is a temperature difference above zero');
  return 10 ** ((celsius - inBaseUnit(reference)) / inBaseUnit(z));
}
