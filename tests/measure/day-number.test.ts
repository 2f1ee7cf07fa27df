import fc from 'fast-check';
import { expect, it } from 'vitest';
import { dayNumber } from '../../src/measure/day-number.js';

it.each([
  ['1970-01-01', 0],
  ['1970-01-02', 1],
  ['2024-02-29', 19_782],
  ['1969-12-31', -1],
])('%s is day %d', (date, expected) => {
  expect(dayNumber(date)).toBe(expected);
});

const noDays = ['2026-02-29', '2026-02-30', '2026-04-31', '2026-13-01', '2026-00-10', '2026-01-00', '2026-1-1', '26-01-01', ''];

it.each([...noDays, '2026-01-01 ', 'today'])('%j is no day', (date) => {
  expect(dayNumber(date)).toBeUndefined();
});

it('counts days one by one, in the order of their names', () => {
  fc.assert(
    fc.property(fc.integer({ min: 0, max: 80_000 }), (day) => {
      const name = (each: number) => new Date(each * 86_400_000).toISOString().slice(0, 10);
      expect(dayNumber(name(day))).toBe(day);
      expect(name(day) < name(day + 1)).toBe(true);
    }),
  );
});
