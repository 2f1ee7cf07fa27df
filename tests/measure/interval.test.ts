import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { formatInterval, type Interval, isAtLeastAsOften, parseInterval, strictestInterval } from '../../src/measure/interval.js';

function read(text: string): Interval {
  const parsed = parseInterval(text);
  if (!parsed.ok) throw new Error(parsed.problem);
  return parsed.value;
}

const time = fc.record({ value: fc.integer({ min: 1, max: 60 }), unit: fc.constantFrom('h', 'd', 'wk', 'mo', 'a') });
const cycles = fc.record({ value: fc.integer({ min: 1, max: 1000 }), unit: fc.constant('{cycles}') });
const interval: fc.Arbitrary<Interval> = fc.oneof(fc.record({ time }), fc.record({ cycles }), fc.record({ time, cycles }));

describe('parseInterval', () => {
  it.each([
    ['1 d', { time: { value: 1, unit: 'd' } }],
    ['25 cycles', { cycles: { value: 25, unit: '{cycles}' } }],
    ['1 mo or 25 cycles', { time: { value: 1, unit: 'mo' }, cycles: { value: 25, unit: '{cycles}' } }],
    ['25 cycles or 1 mo', { time: { value: 1, unit: 'mo' }, cycles: { value: 25, unit: '{cycles}' } }],
  ])('reads %s', (text, expected) => {
    expect(read(text)).toEqual(expected);
  });

  it.each([
    ...[
      '',
      'daily',
      'or',
      '1 d or',
      '0 d',
      '-1 d',
      '1 d or 2 d',
      '1 cycle or 2 cycles',
      '5 mm',
      '1 d or 5 mm',
      '1 d and 5 cycles',
    ],
  ])('refuses %j', (text) => {
    expect(parseInterval(text).ok).toBe(false);
  });
});

describe('isAtLeastAsOften', () => {
  it.each([
    ['1 d', '1 wk', true],
    ['1 wk', '1 d', false],
    ['7 d', '1 wk', true],
    ['1 wk', '1 wk or 20 cycles', false],
    ['1 wk or 20 cycles', '1 wk', true],
    ['1 wk or 20 cycles', '20 cycles', true],
    ['2 wk or 1 cycle', '1 wk or 20 cycles', false],
    ['1 cycle', '1 d', false],
  ])('%s for %s: %s', (next, previous, expected) => {
    expect(isAtLeastAsOften(read(next), read(previous))).toBe(expected);
  });

  it('holds of an interval and itself, and passes through', () => {
    fc.assert(
      fc.property(interval, interval, interval, (a, b, c) => {
        expect(isAtLeastAsOften(a, a)).toBe(true);
        if (isAtLeastAsOften(a, b) && isAtLeastAsOften(b, c)) expect(isAtLeastAsOften(a, c)).toBe(true);
      }),
    );
  });
});

describe('strictestInterval', () => {
  it('satisfies both, in either order, and asks for nothing that neither does', () => {
    fc.assert(
      fc.property(interval, interval, (a, b) => {
        const [both, other] = [strictestInterval(a, b), strictestInterval(b, a)];
        expect(isAtLeastAsOften(both, a) && isAtLeastAsOften(both, b)).toBe(true);
        expect(isAtLeastAsOften(both, other) && isAtLeastAsOften(other, both)).toBe(true);
        if (isAtLeastAsOften(a, b)) expect(isAtLeastAsOften(a, both)).toBe(true);
      }),
    );
  });
});

describe('formatInterval', () => {
  it.each([
    ['1 d', 'every day of use'],
    ['2 d', 'every 2 days'],
    ['1 mo', 'every month'],
    ['1 cycle', 'every cycle'],
    ['25 cycles', 'every 25 cycles'],
    ['1 mo or 25 cycles', 'every 25 cycles or every month, whichever comes first'],
  ])('%s is %s', (text, printed) => {
    expect(formatInterval(read(text))).toBe(printed);
  });
});
