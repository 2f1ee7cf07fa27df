import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { countings, countReadings } from '../../src/measure/count-readings.js';
import { celsiusList, timesFor } from './readings.js';

describe('countReadings', () => {
  it.each([
    ['lower', 1 * 10 + 1 * 20],
    ['held', 1 * 10 + 4 * 20],
    ['mean', 2.5 * 10 + 2.5 * 20],
  ] as const)('%s', (counting, expected) => {
    expect(countReadings([0, 10, 30], [1, 4, 1], counting)).toBe(expected);
  });

  it('counts nothing where no time passes', () => {
    for (const counting of ['lower', 'held', 'mean'] as const) {
      expect(countReadings([], [], counting)).toBe(0);
      expect(countReadings([5], [9], counting)).toBe(0);
    }
    expect(Object.keys(countings)).toEqual(['lower', 'held', 'mean']);
  });

  it('refuses what does not belong together', () => {
    expect(() => countReadings([0, 1], [1], 'lower')).toThrow(RangeError);
  });

  it('never counts more by the lower of two than by another way', () => {
    fc.assert(
      fc.property(celsiusList, fc.integer({ min: 1, max: 60 }), (rates, step) => {
        const seconds = timesFor(rates, step);
        const lower = countReadings(seconds, rates, 'lower');
        expect(lower).toBeLessThanOrEqual(countReadings(seconds, rates, 'held') + 1e-9);
        expect(lower).toBeLessThanOrEqual(countReadings(seconds, rates, 'mean') + 1e-9);
      }),
    );
  });
});
