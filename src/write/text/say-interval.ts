import type { Interval } from '../../measure/interval.js';
import type { Quantity } from '../../measure/quantity.js';
import { phrase, type Spoken } from './phrase.js';

const phraseOfUnit: Readonly<Record<string, string>> = {
  s: 'every.second',
  min: 'every.minute',
  h: 'every.hour',
  d: 'every.day',
  wk: 'every.week',
  mo: 'every.month',
  a: 'every.year',
  '{cycles}': 'every.cycle',
};

/**
 * How often, in the words of the language: `every day of use`, `every 25 cycles or every month, whichever comes first`.
 *
 * @throws RangeError on a unit that is neither a time nor cycles.
 */
export function sayInterval(rulebook: Spoken, { time, cycles }: Interval): string {
  const sayPart = ({ value, unit }: Quantity) => phrase(rulebook, phraseOfUnit[unit] ?? unit, { count: value });
  if (time !== undefined && cycles !== undefined)
    return phrase(rulebook, 'every.either', { cycles: sayPart(cycles), time: sayPart(time) });
  const only = time ?? cycles;
  return only === undefined ? '' : sayPart(only);
}
