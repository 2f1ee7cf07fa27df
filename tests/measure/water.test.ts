import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { inBaseUnit, parseQuantity, type Quantity } from '../../src/measure/quantity.js';
import { units } from '../../src/measure/units.js';
import {
  conductivityAt,
  cyclesOfContainer,
  cyclesOfSalt,
  cyclesPerRegeneration,
  detergentPerCycle,
  hardnessClasses,
} from '../../src/measure/water.js';

function read(text: string): Quantity {
  const parsed = parseQuantity(text);
  if (!parsed.ok) throw new Error(parsed.problem);
  return parsed.value;
}

describe('classes of hardness', () => {
  it.each([
    ['60 mg/L CaCO3', 'soft', 'soft (weich)'],
    ['61 mg/L CaCO3', 'moderately hard', 'soft (weich)'],
    ['120 mg/L CaCO3', 'moderately hard', 'soft (weich)'],
    ['1.5 mmol/L', 'hard', 'medium (mittel)'],
    ['180 mg/L CaCO3', 'hard', 'medium (mittel)'],
    ['2.5 mmol/L', 'very hard', 'medium (mittel)'],
    ['14.1 °dH', 'very hard', 'hard (hart)'],
  ])('%s', (hardness, us, german) => {
    expect(hardnessClasses(read(hardness)).map(({ name }) => name)).toEqual([us, german]);
  });
});

describe('units of hardness', () => {
  const codes = units.filter(({ dimension }) => dimension === 'water hardness').map(({ ucum }) => ucum);

  it('go there and back', () => {
    fc.assert(
      fc.property(fc.constantFrom(...codes), fc.constantFrom(...codes), fc.integer({ min: 1, max: 9999 }), (from, to, value) => {
        const base = inBaseUnit({ value, unit: from });
        const there = base / inBaseUnit({ value: 1, unit: to });
        expect(inBaseUnit({ value: there, unit: to }) / base).toBeCloseTo(1, 9);
      }),
    );
  });
});

describe('conductivityAt', () => {
  it('goes there and back', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 40 }), fc.integer({ min: 0, max: 40 }), (from, to) => {
        const [start, end] = [`${from} °C`, `${to} °C`].map(read) as [Quantity, Quantity];
        const there = conductivityAt(read('500 µS/cm'), start, end);
        expect(conductivityAt(there, end, start).value).toBeCloseTo(500, 6);
      }),
    );
  });

  it('is refused where the line does not hold', () => {
    expect(() => conductivityAt(read('500 µS/cm'), read('41 °C'))).toThrow(RangeError);
    expect(() => conductivityAt(read('500 µS/cm'), read('-1 °C'))).toThrow(RangeError);
    expect(() => conductivityAt(read('500 µS/cm'), read('0 °C'), read('25 °C'), read('4 %/K'))).toThrow(RangeError);
    expect(() => conductivityAt(read('500 mg/L'), read('20 °C'))).toThrow(RangeError);
  });
});

describe('supplies', () => {
  it('last whole cycles', () => {
    expect(cyclesPerRegeneration(read('10 gpg'), read('0 gpg'), read('10 gal'), read('3000 grains')).value).toBe(30);
    expect(cyclesPerRegeneration(read('10 gpg'), read('0 gpg'), read('10 gal'), read('2999 grains')).value).toBe(29);
    expect(cyclesOfSalt(read('2.9 kg'), read('1 kg'), read('30 cycles')).value).toBe(60);
    expect(detergentPerCycle(read('5 mL/L'), read('12 L'))).toEqual({ value: 60, unit: 'mL' });
    expect(cyclesOfContainer(read('5 L'), read('60 mL')).value).toBe(83);
  });

  it('are not divided by nothing', () => {
    expect(() => cyclesPerRegeneration(read('1 °dH'), read('1 °dH'), read('10 L'), read('1 kg'))).toThrow(RangeError);
    expect(() => cyclesPerRegeneration(read('1 °dH'), read('0 °dH'), read('0 L'), read('1 kg'))).toThrow(RangeError);
    expect(() => cyclesOfSalt(read('1 kg'), read('0 kg'), read('30 cycles'))).toThrow(RangeError);
    expect(() => cyclesOfContainer(read('5 L'), read('0 mL'))).toThrow(RangeError);
  });
});
