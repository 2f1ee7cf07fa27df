import { type Dimension, findUnit, type Unit } from './units.js';

/** A number with its unit, as somebody wrote it. */
export interface Quantity {
  value: number;
  /** UCUM code. */
  unit: string;
}

export type Parsed<T> = { ok: true; value: T } | { ok: false; problem: string; unknownUnit?: string };

/**
 * Reads `10 min`, `134 °C`, `A0 600`, `F0 15 min`, `25 cycles`, `3 times`, `pH 7`. Never guesses: a number without a unit
 * is refused.
 */
export function parseQuantity(text: string): Parsed<Quantity> {
  const match = /^(?:(A0|F0|pH) )?(-?\d+(?:\.\d+)?(?:e-?\d+)?)(?: ?(\S.*))?$/u.exec(text.trim());
  if (match === null) return { ok: false, problem: `expected a number and a unit, got \`${text}\`` };
  const name = unitName(match[1], match[3]);
  if (name === undefined) return { ok: false, problem: `expected a unit after the number in \`${text}\`` };
  const unit = findUnit(name);
  if (unit === undefined) return { ok: false, problem: `unknown unit \`${name}\` in \`${text}\``, unknownUnit: name };
  const quantity = { value: Number(match[2]), unit: unit.ucum };
  const problem = whyImpossible(quantity);
  return problem === undefined ? { ok: true, value: quantity } : { ok: false, problem: `\`${text}\` ${problem}` };
}

/** `A0` and `pH` are units by themselves; `F0 15 min` is F0 in minutes, and nothing else goes before a number with its unit. */
function unitName(before: string | undefined, after: string | undefined): string | undefined {
  if (before === undefined) return after;
  if (before === 'F0') return after === undefined ? undefined : `${after} F0`;
  return after === undefined ? before : undefined;
}

/** Larger than anything the rules measure, and far from where binary fractions grow coarse. */
const largest = 1e9;

/** Why there can be no such quantity, as the end of a sentence. A pressure may be below zero: gauges count from the air's. */
export function whyImpossible({ value, unit }: Quantity): string | undefined {
  if (!(Math.abs(value) <= largest)) return `is beyond ${largest.toLocaleString('en-US')}`;
  const { dimension } = unitOf({ value, unit });
  return value < 0 && !mayBeNegative.has(dimension) ? 'is below zero' : undefined;
}

const mayBeNegative: ReadonlySet<Dimension> = new Set(['temperature', 'temperature difference', 'pressure', 'pressure rate']);

/** The least number there can be of what a unit measures, in the base unit. */
export function leastOf(unit: string): number {
  return mayBeNegative.has(dimensionOf({ value: 0, unit })) ? Number.NEGATIVE_INFINITY : 0;
}

/** A dimension with its article, for messages: `a time`, `an acidity`, `a number of cycles`. */
export function describeDimension(dimension: Dimension): string {
  if (dimension === 'cycles') return 'a number of cycles';
  return `${/^[aeiouAF]/.test(dimension) ? 'an' : 'a'} ${dimension}`;
}

/** A unit as people write it in the rules: `min`, `°C`, `cycles`. */
export function writtenUnit(ucum: string): string {
  const { dimension, many } = unitOf({ value: 0, unit: ucum });
  return dimension === 'time' ? ucum : many;
}

/** What a quantity measures. */
export function dimensionOf(quantity: Quantity): Dimension {
  return unitOf(quantity).dimension;
}

/** The number in the base unit of its dimension (s, °C, K, mm, mL, g, kPa, µS/cm, mg/L, mg/L CaCO3 …), for comparing. */
export function inBaseUnit(quantity: Quantity): number {
  const { factor, offset = 0 } = unitOf(quantity);
  // Twelve significant digits: 8 in and 203.2 mm are the same length, whatever binary fractions make of them.
  return Number((quantity.value * factor + offset).toPrecision(12));
}

/** A number in the base unit of a dimension as a quantity in a unit of it, to twelve significant digits. */
export function fromBaseUnit(base: number, unit: string): Quantity {
  const { factor, offset = 0 } = unitOf({ value: 0, unit });
  return { value: Number(((base - offset) / factor).toPrecision(12)), unit };
}

/** The same quantity in another unit of its dimension, to twelve significant digits. Throws on another dimension. */
export function convertQuantity(quantity: Quantity, unit: string): Quantity {
  const [from, to] = [dimensionOf(quantity), dimensionOf({ value: 0, unit })];
  if (from !== to) throw new RangeError(`cannot convert ${from} to ${to}`);
  return fromBaseUnit(inBaseUnit(quantity), unit);
}

/** Negative when `a` is less than `b`, 0 when equal, positive when more. Throws on different dimensions. */
export function compareQuantities(a: Quantity, b: Quantity): number {
  if (dimensionOf(a) !== dimensionOf(b)) throw new RangeError(`cannot compare ${dimensionOf(a)} with ${dimensionOf(b)}`);
  return inBaseUnit(a) - inBaseUnit(b);
}

/** For people: `10 minutes`, `1 week`, `134 °C`, `A0 600`, `F0 15 min`, `70%`, `pH 7.5`. */
export function formatQuantity({ value, unit }: Quantity): string {
  const { one, many, dimension } = unitOf({ value, unit });
  const number = formatNumber(value);
  if (dimension === 'A0') return `A0 ${number}`;
  if (dimension === 'F0') return `F0 ${number} min`;
  if (dimension === 'acidity') return `pH ${number}`;
  if (dimension === 'share') return `${number}%`;
  return `${number} ${value === 1 ? one : many}`;
}

function unitOf({ unit }: Quantity): Unit {
  const found = findUnit(unit);
  if (found === undefined) throw new RangeError(`unknown unit ${unit}`);
  return found;
}

function formatNumber(value: number): string {
  // The usual case without the tables of `toLocaleString`, which take long to load.
  if (Number.isSafeInteger(value) && Math.abs(value) >= 10_000) return String(value).replace(/\B(?=(?:\d{3})+$)/g, ',');
  if (Math.abs(value) >= 10_000) return value.toLocaleString('en-US', { maximumFractionDigits: 6 });
  return String(value);
}
