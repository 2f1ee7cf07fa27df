import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { calculations, runCalculation } from '../../src/measure/calculations.js';
import { dimensionOf, type Quantity } from '../../src/measure/quantity.js';
import { units } from '../../src/measure/units.js';

const schema = readFileSync(new URL('../../rules/schema/fixture.json', import.meta.url), 'utf8');
const calculationOf = (name: string) => calculations[name] ?? expect.fail(`no calculation ${name}`);

/** A quantity of each dimension with which every calculation has a result. */
function sample(dimension: string): Quantity {
  const unit = units.find((each) => each.dimension === dimension)?.ucum ?? 's';
  return { value: dimension === 'pressure' ? 200_000 : 20, unit };
}

describe('the calculations', () => {
  it('are those that the schema of fixtures lists', () => {
    const [, list = ''] = /"calculation": \{\s*"enum": (\[[^\]]*\])/.exec(schema) ?? [];
    expect(JSON.parse(list)).toEqual(Object.keys(calculations));
  });

  it.each(Object.keys(calculations))('%s gives what it says', (name) => {
    const calculation = calculationOf(name);
    const given = Object.fromEntries(
      Object.entries(calculation.inputs).map(([each, { dimension, many }]) => {
        const quantity = sample(dimension === 'any' ? 'mass' : dimension);
        return [each, many ? [quantity, quantity] : [quantity]];
      }),
    );
    if (name === 'conductivity') given['coefficient'] = [{ value: 2, unit: '%/K' }];
    if (name === 'softener') given['left'] = [{ value: 0, unit: 'mg{CaCO3}/L' }];
    const result = runCalculation(calculation, given);
    expect(dimensionOf(result)).toBe(calculation.result === 'same' ? 'mass' : calculation.result);
    expect(calculation.about).toMatch(/^(?:[a-z]|A0|F0)/);
  });

  it('refuse what is missing, of another kind, given twice or out of bounds', () => {
    const celsius = { value: 134, unit: 'Cel' };
    const minute = { value: 1, unit: 'min' };
    const a0 = calculationOf('a0');
    expect(() => runCalculation(a0, { temperature: [celsius] })).toThrow('time is missing');
    expect(() => runCalculation(a0, { temperature: [minute], time: [minute] })).toThrow(
      'temperature is a time, not a temperature',
    );
    expect(() => runCalculation(a0, { temperature: [celsius, celsius], time: [minute] })).toThrow('given more than once');
    expect(() => runCalculation(a0, { temperature: [{ value: 1e9, unit: 'Cel' }], time: [minute] })).toThrow('beyond all bounds');
    expect(() => runCalculation(calculationOf('a0-held'), { readings: [celsius], interval: [{ value: 0, unit: 's' }] })).toThrow(
      'above zero',
    );
  });
});
