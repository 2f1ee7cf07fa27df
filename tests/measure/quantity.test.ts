import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  compareQuantities,
  describeDimension,
  dimensionOf,
  formatQuantity,
  inBaseUnit,
  parseQuantity,
  type Quantity,
  writtenUnit,
} from '../../src/measure/quantity.js';
import { units } from '../../src/measure/units.js';

function read(text: string): Quantity {
  const parsed = parseQuantity(text);
  if (!parsed.ok) throw new Error(parsed.problem);
  return parsed.value;
}

function problem(text: string): string {
  const parsed = parseQuantity(text);
  if (parsed.ok) throw new Error(`${text} is read`);
  return parsed.problem;
}

describe('parseQuantity', () => {
  it.each([
    ['10 min', 10, 'min'],
    ['10min', 10, 'min'],
    [' 1.5 h ', 1.5, 'h'],
    ['134 °C', 134, 'Cel'],
    ['-5 °C', -5, 'Cel'],
    ['-80 kPa', -80, 'kPa'],
    ['25 cycles', 25, '{cycles}'],
    ['1 cycle', 1, '{cycles}'],
    ['3 times', 3, '1'],
    ['A0 600', 600, '{A0}'],
    ['600 A0', 600, '{A0}'],
    ['F0 15 min', 15, 'min{F0}'],
    ['15 min F0', 15, 'min{F0}'],
    ['15 min{F0}', 15, 'min{F0}'],
    ['0.02 mmol/L', 0.02, 'mmol{CaCO3}/L'],
    ['50 mg/L CaCO3', 50, 'mg{CaCO3}/L'],
    ['12 °dH', 12, '10.mg{CaO}/L'],
    ['1.3 mbar/min', 1.3, 'mbar/min'],
    ['27 psi', 27, '[psi]'],
    ['pH 7.5', 7.5, '[pH]'],
    ['7.5 [pH]', 7.5, '[pH]'],
    ['50%', 50, '%'],
    ['50 %', 50, '%'],
    ['15 µS/cm', 15, 'uS/cm'],
    ['15 μS/cm', 15, 'uS/cm'],
    ['1 a', 1, 'a'],
    ['2 inches', 2, '[in_i]'],
    ['1e3 mL', 1000, 'mL'],
    ['5e-1 mL', 0.5, 'mL'],
    ['0 min', 0, 'min'],
  ])('reads %s', (text, value, unit) => {
    expect(read(text)).toEqual({ value, unit });
  });

  it.each([
    ['', 'expected a number and a unit, got ``'],
    ['ten min', 'expected a number and a unit, got `ten min`'],
    ['.5 min', 'expected a number and a unit, got `.5 min`'],
    ['1,5 min', 'unknown unit `,5 min` in `1,5 min`'],
    ['10', 'expected a unit after the number in `10`'],
    ['A0 600 s', 'expected a unit after the number in `A0 600 s`'],
    ['F0 15', 'expected a unit after the number in `F0 15`'],
    ['F0 15 s', 'unknown unit `s F0` in `F0 15 s`'],
    ['pH 7 min', 'expected a unit after the number in `pH 7 min`'],
    ['10 Min', 'unknown unit `Min` in `10 Min`'],
    ['10 m in', 'unknown unit `m in` in `10 m in`'],
    ['-1 min', '`-1 min` is below zero'],
    ['-1 %', '`-1 %` is below zero'],
    ['A0 -1', '`A0 -1` is below zero'],
    ['1e400 min', '`1e400 min` is beyond 1,000,000,000'],
    ['-1e400 °C', '`-1e400 °C` is beyond 1,000,000,000'],
  ])('refuses %j', (text, message) => {
    expect(problem(text)).toBe(message);
  });

  it('names the unit that is not known', () => {
    expect(parseQuantity('5 mins')).toMatchObject({ ok: false, unknownUnit: 'mins' });
    expect(parseQuantity('5')).not.toHaveProperty('unknownUnit');
  });

  it('never throws', () => {
    fc.assert(fc.property(fc.string({ unit: 'binary' }), (text) => void parseQuantity(text)));
  });
});

const unit = fc.constantFrom(...units.map(({ ucum }) => ucum));
const small = fc.double({ min: 0.001, max: 10_000, noNaN: true }).map((each) => Number(each.toPrecision(6)));
const value = fc.oneof(fc.integer({ min: 0, max: 1_000_000 }), small);

describe('inBaseUnit', () => {
  it.each([
    ['1 wk', 604_800],
    ['1 mo', 2_629_800],
    ['1 a', 31_557_600],
    ['32 °F', 0],
    ['212 °F', 100],
    ['8 in', 203.2],
    ['1 bar', 100],
    ['20 ug', 0.00002],
    ['0.3 h', 1080],
    ['1 mmol/L', 100.09],
    ['1 °fH', 10],
    ['30 psi', 206.842718795],
  ])('%s is %d', (text, expected) => {
    expect(inBaseUnit(read(text))).toBe(expected);
  });

  it('keeps the order of quantities in one unit', () => {
    fc.assert(
      fc.property(unit, value, value, (ucum, a, b) => {
        const [left, right] = [inBaseUnit({ value: a, unit: ucum }), inBaseUnit({ value: b, unit: ucum })];
        if (a < b) expect(left).toBeLessThanOrEqual(right);
        if (Math.abs(a - b) > 1e-3) expect(Math.sign(left - right)).toBe(Math.sign(a - b));
      }),
    );
  });

  it('makes the same of the same length, whatever the unit', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 10_000 }), (eighths) => {
        const [inches, millimeters] = [eighths / 8, (eighths * 254) / 80];
        expect(compareQuantities({ value: inches, unit: '[in_i]' }, { value: millimeters, unit: 'mm' })).toBe(0);
      }),
    );
  });
});

describe('compareQuantities', () => {
  it('orders across units', () => {
    expect(compareQuantities(read('1 h'), read('59 min'))).toBeGreaterThan(0);
    expect(compareQuantities(read('60 min'), read('1 h'))).toBe(0);
    expect(compareQuantities(read('5 °C'), read('50 °F'))).toBeLessThan(0);
  });

  it('refuses what cannot be compared, a time with an A0 above all', () => {
    expect(() => compareQuantities(read('600 s'), read('A0 600'))).toThrow('cannot compare time with A0');
    expect(() => compareQuantities(read('15 min'), read('F0 15 min'))).toThrow('cannot compare time with F0');
    expect(() => compareQuantities(read('50 mg/L'), read('50 mg/L CaCO3'))).toThrow(
      'cannot compare mass concentration with water hardness',
    );
    expect(() => compareQuantities(read('5 °C'), read('5 K'))).toThrow('cannot compare temperature with temperature difference');
  });
});

describe('formatQuantity', () => {
  it.each([
    ['1 min', '1 minute'],
    ['10 min', '10 minutes'],
    ['0.5 h', '0.5 hours'],
    ['134 °C', '134 °C'],
    ['A0 600', 'A0 600'],
    ['15 min F0', 'F0 15 min'],
    ['8.4 °dH', '8.4 °dH'],
    ['1 ft', '1 foot'],
    ['70 %', '70%'],
    ['pH 7.5', 'pH 7.5'],
    ['100000 times', '100,000 times'],
    ['1 in', '1 inch'],
  ])('%s is printed as %s', (text, printed) => {
    expect(formatQuantity(read(text))).toBe(printed);
  });

  it('prints what can be read again as the same quantity', () => {
    fc.assert(
      fc.property(unit, fc.integer({ min: 0, max: 9999 }), (ucum, each) => {
        const quantity = { value: each, unit: ucum };
        expect(read(formatQuantity(quantity))).toEqual(quantity);
      }),
    );
  });
});

describe('words for messages', () => {
  it('have the right article', () => {
    const dimensions = ['time', 'A0', 'F0', 'acidity', 'endotoxin level', 'cycles', 'share'] as const;
    expect(dimensions.map(describeDimension)).toEqual([
      'a time',
      'an A0',
      'an F0',
      'an acidity',
      'an endotoxin level',
      'a number of cycles',
      'a share',
    ]);
  });

  it('name units as they are written, so that they can be read again', () => {
    for (const { ucum, dimension } of units) expect(dimensionOf(read(`1 ${writtenUnit(ucum)}`))).toBe(dimension);
    expect(['min', 'Cel', '{cycles}', '1'].map(writtenUnit)).toEqual(['min', '°C', 'cycles', 'times']);
  });
});
