import { compareQuantities, dimensionOf, inBaseUnit, type Quantity } from './quantity.js';

/**
 * Coefficients n1 to n10 of the saturation line of water. Source: IAPWS R7-97(2012), Table 34, used with acknowledgement to
 * the International Association for the Properties of Water and Steam.
 */
const [n1, n2, n3, n4, n5, n6, n7, n8, n9, n10] = [
  0.11670521452767e4, -0.72421316703206e6, -0.17073846940092e2, 0.1202082470247e5, -0.32325550322333e7, 0.1491510861353e2,
  -0.48232657361591e4, 0.40511340542057e6, -0.23855557567849, 0.65017534844798e3,
] as const;

const zeroCelsius = 273.15;
/** Pressure of the triple point in kPa: below it no steam is saturated. Source: IAPWS R7-97(2012), section 8. */
export const lowestSaturationPressure = 0.611213;
/** How far a temperature may be from that of saturated steam, in K. Source: EN 285 and EN 13060, recalled. */
export const steamTolerance = 2;
/** The standard atmosphere is used up to here. */
export const highestAltitude: Quantity = { value: 11_000, unit: 'm' };
/** Standard atmosphere in kPa, exactly. */
const standardAtmosphere = 101.325;

/**
 * Absolute pressure in kPa at which steam of this temperature in °C is saturated. Source: IAPWS R7-97(2012), equation 30.
 *
 * @throws RangeError outside 0 °C to 373.946 °C, where the equation does not hold.
 */
export function saturationPressure(celsius: number): number {
  const kelvin = celsius + zeroCelsius;
  if (!(kelvin >= 273.15 && kelvin <= 647.096)) throw new RangeError('steam tables hold from 0 °C to 373.946 °C');
  const theta = kelvin + n9 / (kelvin - n10);
  const a = theta ** 2 + n1 * theta + n2;
  const b = n3 * theta ** 2 + n4 * theta + n5;
  const c = n6 * theta ** 2 + n7 * theta + n8;
  return ((2 * c) / (-b + Math.sqrt(b ** 2 - 4 * a * c))) ** 4 * 1000;
}

/**
 * Temperature in °C of saturated steam at this absolute pressure in kPa. Source: IAPWS R7-97(2012), equation 31.
 *
 * @throws RangeError outside 0.611213 kPa to 22,064 kPa, where the equation does not hold.
 */
export function saturationTemperature(kilopascals: number): number {
  if (!(kilopascals >= lowestSaturationPressure && kilopascals <= 22_064))
    throw new RangeError('steam tables hold from 0.611213 kPa to 22,064 kPa absolute');
  const beta = (kilopascals / 1000) ** 0.25;
  const e = beta ** 2 + n3 * beta + n6;
  const f = n1 * beta ** 2 + n4 * beta + n7;
  const g = n2 * beta ** 2 + n5 * beta + n8;
  const d = (2 * g) / (-f - Math.sqrt(f ** 2 - 4 * e * g));
  return (n10 + d - Math.sqrt((n10 + d) ** 2 - 4 * (n9 + n10 * d))) / 2 - zeroCelsius;
}

/**
 * Pressure of the air at an altitude, in kPa. Source: ISO 2533:1975, standard atmosphere, layer from sea level to 11 km;
 * weather moves the true pressure by a few kPa either way.
 *
 * @throws RangeError when the argument is no length up to 11 km.
 */
export function airPressureAt(altitude: Quantity): number {
  if (dimensionOf(altitude) !== 'length') throw new RangeError('an altitude is a length');
  const meters = inBaseUnit(altitude) / 1000;
  if (compareQuantities(altitude, highestAltitude) > 0) throw new RangeError('the standard atmosphere is used up to 11,000 m');
  return standardAtmosphere * (1 - (0.0065 * meters) / 288.15) ** (9.80665 / (287.05287 * 0.0065));
}
