import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { longestHold } from '../../src/measure/hold.js';
import { celsiusList, timesFor } from './readings.js';

const band = { from: 134, to: 137 };

describe('longestHold', () => {
  it('starts with the first reading inside and ends with the last', () => {
    expect(longestHold([0, 10, 20, 30, 40], [[133.9, 134, 136, 137, 137.1]], band)).toEqual({ first: 1, last: 3, seconds: 20 });
  });

  it('asks it of every channel', () => {
    const channels = [
      [134, 134, 134, 134],
      [134, 134, 133, 134],
    ];
    expect(longestHold([0, 10, 20, 30], channels, band)).toEqual({ first: 0, last: 1, seconds: 10 });
  });

  it('takes the earlier of two as long', () => {
    expect(longestHold([0, 10, 20, 30, 40], [[134, 134, 20, 134, 134]], band)).toEqual({ first: 0, last: 1, seconds: 10 });
  });

  it('of one reading has no length, and of none there is none', () => {
    expect(longestHold([0, 10], [[134, 20]], band)).toEqual({ first: 0, last: 0, seconds: 0 });
    expect(longestHold([0, 10], [[20, 20]], band)).toBeUndefined();
    expect(longestHold([0, 10], [[134]], band)).toEqual({ first: 0, last: 0, seconds: 0 });
  });

  it('of two channels is never longer than of one', () => {
    fc.assert(
      fc.property(celsiusList, celsiusList, (one, two) => {
        const length = Math.min(one.length, two.length);
        const seconds = timesFor(one.slice(0, length), 5);
        const wide = { from: 60, to: 120 };
        const both = longestHold(seconds, [one, two], wide)?.seconds ?? 0;
        expect(both).toBeLessThanOrEqual(longestHold(seconds, [one], wide)?.seconds ?? 0);
      }),
    );
  });
});
