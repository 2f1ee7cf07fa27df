import library from '@lhncbc/ucum-lhc';
import { describe, expect, it } from 'vitest';
import { inBaseUnit } from '../../src/measure/quantity.js';
import { units } from '../../src/measure/units.js';

const ucum = library.UcumLhcUtils.getInstance();

/** Units that count something of their own, or hang on a mass that UCUM does not know. */
const apart = new Set(['10.mg{CaO}/L', 'mmol{CaCO3}/L']);

describe('our codes, looked up in a library of UCUM', () => {
  it.each(units.map((unit) => unit.ucum))('%s is a UCUM code', (code) => {
    expect(ucum.validateUnitString(code).status).toBe('valid');
  });

  it.each(pairs())('%s in %s', (from, to) => {
    const { status, toVal } = ucum.convertUnitTo(from, 7, to);
    expect(status).toBe('succeeded');
    expect(inBaseUnit({ value: 7, unit: from }) / inBaseUnit({ value: toVal ?? Number.NaN, unit: to })).toBeCloseTo(1, 9);
  });

  it('says why hardness needs codes of its own: 1 °dH and 1 °fH would be the same', () => {
    expect(ucum.convertUnitTo('10.mg{CaO}/L', 1, '10.mg{CaCO3}/L').toVal).toBeCloseTo(1, 12);
    expect(inBaseUnit({ value: 1, unit: '10.mg{CaO}/L' })).toBeCloseTo(17.848, 3);
  });
});

/** Every unit with each other unit of its dimension. */
function pairs(): [string, string][] {
  return units
    .filter(({ ucum: code }) => !apart.has(code))
    .flatMap((from, index, all) =>
      all
        .slice(index + 1)
        .filter(({ dimension }) => dimension === from.dimension)
        .map((to): [string, string] => [from.ucum, to.ucum]),
    );
}
