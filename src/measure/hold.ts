/** A temperature band in °C, both ends included. */
export interface Band {
  from: number;
  to: number;
}

/** An unbroken run of readings: positions of its first and last one, and the time between them in seconds. */
export interface Hold {
  first: number;
  last: number;
  seconds: number;
}

/**
 * The longest unbroken run of readings in which every channel is within the band; of two as long, the earlier one. It starts
 * with the first reading inside and ends with the last one, so that time between two readings never counts unless both are
 * inside. Absent where no moment has all channels inside.
 */
export function longestHold(seconds: readonly number[], channels: readonly (readonly number[])[], band: Band): Hold | undefined {
  let best: Hold | undefined;
  let first: number | undefined;
  for (const [index, time] of seconds.entries()) {
    const inside = channels.every((celsius) => isInside(celsius[index], band));
    if (!inside) first = undefined;
    else first ??= index;
    if (first === undefined) continue;
    const length = time - (seconds[first] ?? time);
    if (best === undefined || length > best.seconds) best = { first, last: index, seconds: length };
  }
  return best;
}

function isInside(celsius: number | undefined, { from, to }: Band): boolean {
  return celsius !== undefined && celsius >= from && celsius <= to;
}
