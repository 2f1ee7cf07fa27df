import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { a0OfHold } from '../../src/measure/a0.js';

const celsius = (value: number) => ({ value, unit: 'Cel' });
const minutes = (value: number) => ({ value, unit: 'min' });

describe('A0 of a hold', () => {
  // ISO 15883-1:2006, Annex B: seconds at 80 °C with the same effect, z = 10 K.
  it.each([
    [80, 1, 60],
    [80, 10, 600],
    [90, 1, 600],
    [90, 5, 3000],
    [70, 100, 600],
  ])('%d °C for %d min is %d', (temperature, time, expected) => {
    const a0 = a0OfHold(celsius(temperature), minutes(time));
    expect(a0.unit).toBe('{A0}');
    expect(a0.value).toBeCloseTo(expected, 9);
  });

  it('counts nothing below 65 °C, and something at it', () => {
    expect(a0OfHold(celsius(64.9), minutes(600)).value).toBe(0);
    expect(a0OfHold(celsius(65), minutes(10)).value).toBeCloseTo(600 * 10 ** -1.5, 9);
  });

  it('is the same in other units', () => {
    expect(a0OfHold({ value: 194, unit: '[degF]' }, { value: 60, unit: 's' }).value).toBeCloseTo(600, 6);
  });

  it('grows with time in step, and tenfold with ten degrees', () => {
    fc.assert(
      fc.property(fc.integer({ min: 65, max: 130 }), fc.integer({ min: 1, max: 600 }), (temperature, time) => {
        const a0 = a0OfHold(celsius(temperature), minutes(time)).value;
        expect(a0OfHold(celsius(temperature), minutes(2 * time)).value / a0).toBeCloseTo(2, 9);
        expect(a0OfHold(celsius(temperature + 10), minutes(time)).value / a0).toBeCloseTo(10, 9);
      }),
    );
  });

  it('refuses what is not a temperature and a time', () => {
    expect(() => a0OfHold(minutes(1), minutes(1))).toThrow(RangeError);
    expect(() => a0OfHold({ value: 10, unit: 'K' }, minutes(1))).toThrow(RangeError);
    expect(() => a0OfHold(celsius(90), { value: 600, unit: '{A0}' })).toThrow(RangeError);
  });
});
