import { describe, expect, it } from 'vitest';
import { convertQuantity } from '../../src/measure/quantity.js';
import { sayQuantity } from '../../src/write/text/say-quantity.js';

const plain = (text: string) => text.replaceAll('\u00a0', ' ');

describe('a quantity with a second unit', () => {
  it.each([
    ['Cel', '[degF]', { value: 134, unit: 'Cel' }, '134 °C (273 °F)'],
    ['Cel', '[degF]', { value: 24, unit: 'Cel' }, '24 °C (75 °F)'],
    ['kPa', 'bar', { value: 304.2, unit: 'kPa' }, '304.2 kPa (3.04 bar)'],
    ['kPa', 'bar', { value: 10, unit: 'min' }, '10 minutes'],
  ])('%s with %s', (unit, also, quantity, said) => {
    expect(plain(sayQuantity({ alsoUnits: { [unit]: also } }, quantity))).toBe(said);
  });

  it('stands in one piece', () => {
    expect(sayQuantity({ alsoUnits: { Cel: '[degF]' } }, { value: 45, unit: 'Cel' })).toBe('45 °C (113\u00a0°F)');
  });
});

describe('converting', () => {
  it('goes there and back', () => {
    expect(convertQuantity(convertQuantity({ value: 121.1, unit: 'Cel' }, '[degF]'), 'Cel')).toEqual({
      value: 121.1,
      unit: 'Cel',
    });
  });

  it('keeps to one dimension', () => {
    expect(() => convertQuantity({ value: 1, unit: 'min' }, 'kPa')).toThrow('cannot convert');
  });
});
