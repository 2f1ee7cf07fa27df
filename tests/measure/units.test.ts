import { describe, expect, it } from 'vitest';
import { findUnit, unitNames, units } from '../../src/measure/units.js';

describe('units', () => {
  it('have names of their own: none means two units', () => {
    const names = units.flatMap(({ ucum, one, many, also }) => [...new Set([ucum, one, many, ...also])]);
    expect(names.filter((name, index) => names.indexOf(name) !== index)).toEqual([]);
    expect(new Set(unitNames())).toEqual(new Set(names));
  });

  it('stand in the order of their size within a dimension', () => {
    for (const dimension of new Set(units.map((unit) => unit.dimension))) {
      const own = units.filter((unit) => unit.dimension === dimension && unit.offset === undefined);
      const factors = own.map(({ factor }) => factor);
      expect(factors, dimension).toEqual([...factors].sort((a, b) => a - b));
    }
  });

  it('are found by code, by printed form and by other ways to write them', () => {
    for (const unit of units)
      for (const name of [unit.ucum, unit.one, unit.many, ...unit.also]) expect(findUnit(name)).toBe(unit);
  });

  it('are not guessed', () => {
    for (const name of ['', 'MIN', 'C', 'constructor', '__proto__', 'min ']) expect(findUnit(name)).toBeUndefined();
  });
});
