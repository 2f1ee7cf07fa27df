import { formatQuantity, type Quantity } from '../../measure/quantity.js';
import { colors } from '../colors.js';
import type { Context } from '../context.js';

/** What a measurement found: lines for people, and the same as data. */
export interface Report {
  rows: [label: string, text: string][];
  data: Record<string, unknown>;
}

export interface PrintOptions {
  json?: boolean;
}

/** Prints a report, aligned or as JSON. */
export function printReport(context: Context, { rows, data }: Report, { json }: PrintOptions): void {
  if (json) {
    context.out(JSON.stringify(data, undefined, 2));
    return;
  }
  const width = Math.max(...rows.map(([label]) => label.length));
  for (const [label, text] of rows) context.out(`${colors.dim(label.padEnd(width))}  ${text}`);
}

/** A quantity for data: nine digits of it, and its UCUM code. */
export function asData({ value, unit }: Quantity): Quantity {
  return { value: Number(value.toPrecision(9)), unit };
}

/** A quantity for people, with so many decimals; rounded down where more would promise too much. */
export function say(quantity: Quantity, decimals: number, way: 'near' | 'down' = 'near'): string {
  const shift = 10 ** decimals;
  const value = Number(quantity.value.toPrecision(12));
  const rounded = way === 'down' ? Math.floor(value * shift + 1e-9) / shift : Number(value.toFixed(decimals));
  return formatQuantity({ ...quantity, value: rounded });
}

/** So many decimals that at least four digits stand. */
export function decimalsFor(value: number): number {
  if (value === 0) return 0;
  return Math.min(6, Math.max(0, 3 - Math.floor(Math.log10(Math.abs(value)))));
}
