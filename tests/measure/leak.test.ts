import { describe, expect, it } from 'vitest';
import { leakRate } from '../../src/measure/leak.js';

const mbar = (value: number) => ({ value, unit: 'mbar' });
const minutes = (value: number) => ({ value, unit: 'min' });

describe('leakRate', () => {
  it('is the rise of pressure over time, and falls below zero where the pressure falls', () => {
    expect(leakRate(mbar(50), mbar(63), minutes(10)).value).toBeCloseTo(0.13, 12);
    expect(leakRate(mbar(63), mbar(50), minutes(10)).value).toBeCloseTo(-0.13, 12);
  });

  it('needs pressures and a time', () => {
    expect(() => leakRate(mbar(1), mbar(2), minutes(0))).toThrow(RangeError);
    expect(() => leakRate(mbar(1), minutes(2), minutes(1))).toThrow(RangeError);
  });
});
