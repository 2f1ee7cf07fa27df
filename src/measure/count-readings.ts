/**
 * How the time between two readings is counted when a rate is added up over a record.
 *
 * - `lower`: with the lower of the two readings. Never more than what happened where a value rises or falls between two
 *   readings; this is what everything uses that is not told otherwise.
 * - `held`: with the reading before (left rectangle rule: each reading holds until the next one).
 * - `mean`: with the mean of both rates (trapezoid rule).
 */
export type Counting = 'lower' | 'held' | 'mean';

export const countings: Readonly<Record<Counting, string>> = {
  lower: 'each step counts with the lower of its two readings',
  held: 'each reading holds until the next one (left rectangles)',
  mean: 'each step counts with the mean of its two rates (trapezoids)',
};

/**
 * Adds up a rate over the time between readings, `seconds` ascending. The result is in seconds times the unit of the rate.
 * With fewer than two readings no time has passed, and the result is 0.
 *
 * @throws RangeError when there are not as many rates as moments.
 */
export function countReadings(seconds: readonly number[], rates: readonly number[], counting: Counting): number {
  if (seconds.length !== rates.length) throw new RangeError('there are not as many readings as moments');
  const countOf = {
    lower: (before: number, after: number) => Math.min(before, after),
    held: (before: number) => before,
    mean: (before: number, after: number) => (before + after) / 2,
  }[counting];
  let total = 0;
  for (const [index, time] of seconds.entries()) {
    const [timeBefore, before, after] = [seconds[index - 1], rates[index - 1], rates[index]];
    if (timeBefore === undefined || before === undefined || after === undefined) continue;
    total += (time - timeBefore) * countOf(before, after);
  }
  return total;
}
