import fc from 'fast-check';

/** Readings of a sensor in °C, as loggers give them. */
export const celsiusList = fc.array(
  fc.integer({ min: 200, max: 1400 }).map((tenths) => tenths / 10),
  { minLength: 2, maxLength: 60 },
);

/** Moments in seconds for as many readings, at equal steps. */
export function timesFor(readings: readonly number[], step: number): number[] {
  return readings.map((_, index) => index * step);
}
