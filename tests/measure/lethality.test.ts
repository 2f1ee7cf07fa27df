import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { a0OfReadings } from '../../src/measure/a0.js';
import { equivalentTime, f0OfHold, f0OfReadings, logReduction } from '../../src/measure/lethality.js';
import { celsiusList, timesFor } from './readings.js';

const celsius = (value: number) => ({ value, unit: 'Cel' });
const minutes = (value: number) => ({ value, unit: 'min' });
const kelvins = (value: number) => ({ value, unit: 'K' });
const ways = fc.constantFrom('lower' as const, 'held' as const, 'mean' as const);

describe('F0', () => {
  it('says what its reference is by what it gives: 15 minutes at 121 °C', () => {
    expect(f0OfHold(celsius(121), minutes(15), celsius(121)).value).toBeCloseTo(15, 9);
    expect(f0OfHold(celsius(121), minutes(15)).value).toBeCloseTo(14.659, 3);
    expect(f0OfHold(celsius(121), minutes(15)).unit).toBe('min{F0}');
  });

  it('of readings that stand still is that of the hold', () => {
    fc.assert(
      fc.property(fc.integer({ min: 80, max: 140 }), fc.integer({ min: 1, max: 30 }), ways, (temperature, steps, counting) => {
        const readings = Array.from({ length: steps + 1 }, () => temperature);
        const seconds = timesFor(readings, 60);
        const ofHold = f0OfHold(celsius(temperature), minutes(steps)).value;
        expect(f0OfReadings(seconds, readings, counting).value / ofHold).toBeCloseTo(1, 9);
      }),
    );
  });
});

describe('A0 and F0 of readings', () => {
  it('add up: a record cut in two at a reading has the sum of both', () => {
    fc.assert(
      fc.property(celsiusList, fc.nat(), ways, (readings, at, counting) => {
        const cut = at % readings.length;
        const seconds = timesFor(readings, 10);
        for (const measure of [a0OfReadings, f0OfReadings]) {
          const [whole, start, end] = [
            measure(seconds, readings, counting).value,
            measure(seconds.slice(0, cut + 1), readings.slice(0, cut + 1), counting).value,
            measure(seconds.slice(cut), readings.slice(cut), counting).value,
          ];
          expect(Math.abs(start + end - whole)).toBeLessThanOrEqual(1e-9 * Math.max(1, whole));
        }
      }),
    );
  });

  it('grow with every degree and never fall with time', () => {
    fc.assert(
      fc.property(celsiusList, fc.integer({ min: 1, max: 50 }), ways, (readings, warmer, counting) => {
        const seconds = timesFor(readings, 10);
        const hotter = readings.map((each) => each + warmer / 10);
        for (const measure of [a0OfReadings, f0OfReadings]) {
          expect(measure(seconds, hotter, counting).value).toBeGreaterThanOrEqual(measure(seconds, readings, counting).value);
          expect(measure(seconds.slice(0, -1), readings.slice(0, -1), counting).value).toBeLessThanOrEqual(
            measure(seconds, readings, counting).value,
          );
        }
      }),
    );
  });
});

describe('equivalentTime', () => {
  it('goes there and back', () => {
    const there = equivalentTime(celsius(180), minutes(10), celsius(170), kelvins(20));
    expect(equivalentTime(celsius(170), there, celsius(180), kelvins(20)).value).toBeCloseTo(600, 9);
  });

  it('refuses what it cannot reckon with', () => {
    expect(() => equivalentTime(celsius(180), celsius(10), celsius(170), kelvins(20))).toThrow(RangeError);
    expect(() => equivalentTime(celsius(180), minutes(10), minutes(170), kelvins(20))).toThrow(RangeError);
    expect(() => equivalentTime(celsius(180), minutes(10), celsius(170), kelvins(0))).toThrow(RangeError);
    expect(() => equivalentTime(celsius(180), minutes(10), celsius(170), minutes(20))).toThrow(RangeError);
  });
});

describe('logReduction', () => {
  it('divides time by the D value', () => {
    expect(logReduction(minutes(1.5), minutes(18))).toEqual({ value: 12, unit: '{log10}' });
  });

  it('refuses a D value that is none', () => {
    expect(() => logReduction(minutes(0), minutes(1))).toThrow(RangeError);
    expect(() => logReduction(celsius(1), minutes(1))).toThrow(RangeError);
  });
});
