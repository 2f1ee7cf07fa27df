import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { airPressureAt, saturationPressure, saturationTemperature } from '../../src/measure/steam.js';

describe('the saturation line', () => {
  // IAPWS R7-97(2012), Tables 35 and 36.
  it.each([
    [300, 3.53658941],
    [500, 2638.89776],
    [600, 12344.3146],
  ])('at %d K is at %d kPa', (kelvin, kilopascals) => {
    expect(saturationPressure(kelvin - 273.15)).toBeCloseTo(kilopascals, kilopascals > 10_000 ? 3 : 5);
  });

  it.each([
    [100, 372.755919],
    [1000, 453.035632],
    [10_000, 584.149488],
  ])('at %d kPa is at %d K', (kilopascals, kelvin) => {
    expect(saturationTemperature(kilopascals) + 273.15).toBeCloseTo(kelvin, 6);
  });

  it('goes there and back, and rises', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.01, max: 373, noNaN: true }), (celsius) => {
        expect(saturationTemperature(saturationPressure(celsius))).toBeCloseTo(celsius, 6);
        expect(saturationPressure(celsius + 0.01)).toBeGreaterThan(saturationPressure(celsius));
      }),
    );
  });

  it.each([-0.1, 374, Number.NaN])('has no pressure at %d °C', (celsius) => {
    expect(() => saturationPressure(celsius)).toThrow(RangeError);
  });

  it.each([0, 0.6, 22_065, Number.NaN])('has no temperature at %d kPa', (kilopascals) => {
    expect(() => saturationTemperature(kilopascals)).toThrow(RangeError);
  });
});

describe('airPressureAt', () => {
  it('falls with altitude, in metres or feet', () => {
    expect(airPressureAt({ value: 0, unit: 'm' })).toBe(101.325);
    expect(airPressureAt({ value: 1000, unit: 'm' })).toBeCloseTo(89.875, 3);
    expect(airPressureAt({ value: 1000 / 0.3048, unit: '[ft_i]' })).toBeCloseTo(89.875, 3);
  });

  it('is not known above the layer, nor for what is no length', () => {
    expect(() => airPressureAt({ value: 12_000, unit: 'm' })).toThrow(RangeError);
    expect(() => airPressureAt({ value: 1, unit: 'kPa' })).toThrow(RangeError);
  });
});
