import type { Rulebook } from '../../link/rulebook.js';
import { convertQuantity, dimensionOf, formatQuantity, type Quantity } from '../../measure/quantity.js';

/**
 * A quantity in words, with the second unit of the region in brackets, a temperature to the
 * degree and others to three digits: `50 mg/L CaCO3 (2.8 °dH)`.
 */
export function sayQuantity({ alsoUnits }: Pick<Rulebook, 'alsoUnits'>, quantity: Quantity): string {
  const also = alsoUnits[quantity.unit];
  if (also === undefined) return formatQuantity(quantity);
  const { value, unit } = convertQuantity(quantity, also);
  const rounded = dimensionOf(quantity) === 'temperature' ? Math.round(value) : Number(value.toPrecision(3));
  // Kept on one line, number with unit.
  const second = formatQuantity({ value: rounded, unit }).replaceAll(' ', '\u00a0');
  return `${formatQuantity(quantity)} (${second})`;
}
