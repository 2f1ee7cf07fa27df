import { dimensionOf, formatQuantity, inBaseUnit, type Parsed, parseQuantity, type Quantity } from './quantity.js';

/** How often at the latest: by time, by cycles run, or whichever of both comes first. */
export interface Interval {
  time?: Quantity;
  cycles?: Quantity;
}

/** Reads `1 d`, `25 cycles`, `1 mo or 25 cycles`. */
export function parseInterval(text: string): Parsed<Interval> {
  const interval: Interval = {};
  for (const part of text.split(/ or /)) {
    const parsed = parseQuantity(part);
    if (!parsed.ok) return parsed;
    const dimension = dimensionOf(parsed.value);
    if (parsed.value.value <= 0) return { ok: false, problem: `expected an interval above zero, got \`${text}\`` };
    if (dimension === 'time' && interval.time === undefined) interval.time = parsed.value;
    else if (dimension === 'cycles' && interval.cycles === undefined) interval.cycles = parsed.value;
    else return { ok: false, problem: `expected one time, one number of cycles or both, got \`${text}\`` };
  }
  return { ok: true, value: interval };
}

/** Whether following `next` always means doing the task at least as often as `previous` asks. */
export function isAtLeastAsOften(next: Interval, previous: Interval): boolean {
  return covers(next.time, previous.time) && covers(next.cycles, previous.cycles);
}

/** The interval that satisfies both. */
export function strictestInterval(a: Interval, b: Interval): Interval {
  const time = smaller(a.time, b.time);
  const cycles = smaller(a.cycles, b.cycles);
  return { ...(time && { time }), ...(cycles && { cycles }) };
}

/** For people: `every day of use`, `every 25 cycles or 1 month, whichever comes first`, `every cycle`. */
export function formatInterval({ time, cycles }: Interval): string {
  const parts = [cycles, time].filter((each) => each !== undefined).map(formatPart);
  return parts.length === 2 ? `every ${parts.join(' or every ')}, whichever comes first` : `every ${parts.join('')}`;
}

function covers(next: Quantity | undefined, previous: Quantity | undefined): boolean {
  if (previous === undefined) return true;
  return next !== undefined && inBaseUnit(next) <= inBaseUnit(previous);
}

function smaller(a: Quantity | undefined, b: Quantity | undefined): Quantity | undefined {
  if (a === undefined || b === undefined) return a ?? b;
  return inBaseUnit(a) <= inBaseUnit(b) ? a : b;
}

function formatPart(quantity: Quantity): string {
  if (quantity.unit === 'd' && quantity.value === 1) return 'day of use';
  const text = formatQuantity(quantity);
  return quantity.value === 1 ? text.slice(2) : text;
}
