import type { Rulebook } from '../../link/rulebook.js';
import { convertQuantity, dimensionOf, type Quantity } from '../../measure/quantity.js';
import { findUnit } from '../../measure/units.js';
import { phrase, type Spoken } from './phrase.js';

/** The phrases of units that are words, or that stand otherwise than behind their number, by UCUM code. */
const phraseOfUnit: Readonly<Record<string, string>> = {
  s: 'unit.second',
  min: 'unit.minute',
  h: 'unit.hour',
  d: 'unit.day',
  wk: 'unit.week',
  mo: 'unit.month',
  a: 'unit.year',
  '[in_i]': 'unit.inch',
  '[ft_i]': 'unit.foot',
  '[gal_us]': 'unit.us-gallon',
  '[gr]': 'unit.grain',
  '%/K': 'unit.percent-per-kelvin',
  '[CFU]/mL': 'unit.colonies-per-ml',
  '{spores}': 'unit.spore',
  '[EU]/mL': 'unit.endotoxin-per-ml',
  '%': 'unit.percent',
  '[pH]': 'unit.ph',
  '{cycles}': 'unit.cycle',
  '1': 'unit.time',
  '{log10}': 'unit.log',
  '{A0}': 'unit.a0',
  'min{F0}': 'unit.f0',
};

/** A quantity in the words of the language: `10 minutes`, `134 °C`, `A0 600`, `70%`. */
export function sayPlainQuantity(rulebook: Spoken, { value, unit }: Quantity): string {
  const id = phraseOfUnit[unit];
  if (id !== undefined) return phrase(rulebook, id, { count: value });
  return phrase(rulebook, 'unit.sign', { count: value, unit: findUnit(unit)?.one ?? unit });
}

/**
 * A quantity in words, with the second unit of the region in brackets, a temperature to the
 * degree and others to three digits: `50 mg/L CaCO3 (2.8 °dH)`.
 */
export function sayQuantity(rulebook: Spoken & Pick<Rulebook, 'alsoUnits'>, quantity: Quantity): string {
  const also = rulebook.alsoUnits[quantity.unit];
  if (also === undefined) return sayPlainQuantity(rulebook, quantity);
  const { value, unit } = convertQuantity(quantity, also);
  const rounded = dimensionOf(quantity) === 'temperature' ? Math.round(value) : Number(value.toPrecision(3));
  // Kept on one line, number with unit.
  const second = sayPlainQuantity(rulebook, { value: rounded, unit }).replaceAll(' ', '\u00a0');
  return `${sayPlainQuantity(rulebook, quantity)} (${second})`;
}
