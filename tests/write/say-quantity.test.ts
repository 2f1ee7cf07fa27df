import { describe, expect, it } from 'vitest';
import { formatInterval, parseInterval } from '../../src/measure/interval.js';
import { convertQuantity, formatQuantity } from '../../src/measure/quantity.js';
import { units } from '../../src/measure/units.js';
import { sayInterval } from '../../src/write/text/say-interval.js';
import { sayPlainQuantity, sayQuantity } from '../../src/write/text/say-quantity.js';
import { shippedPhrases } from './shipped-phrases.js';

const english = { phrases: shippedPhrases(), language: 'en-US' };

const plain = (text: string) => text.replaceAll('\u00a0', ' ');

describe('a quantity with a second unit', () => {
  it.each([
    ['Cel', '[degF]', { value: 134, unit: 'Cel' }, '134 °C (273 °F)'],
    ['Cel', '[degF]', { value: 24, unit: 'Cel' }, '24 °C (75 °F)'],
    ['kPa', 'bar', { value: 304.2, unit: 'kPa' }, '304.2 kPa (3.04 bar)'],
    ['kPa', 'bar', { value: 10, unit: 'min' }, '10 minutes'],
  ])('%s with %s', (unit, also, quantity, said) => {
    expect(plain(sayQuantity({ ...english, alsoUnits: { [unit]: also } }, quantity))).toBe(said);
  });

  it('stands in one piece', () => {
    expect(sayQuantity({ ...english, alsoUnits: { Cel: '[degF]' } }, { value: 45, unit: 'Cel' })).toBe('45 °C (113\u00a0°F)');
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

describe('in English', () => {
  it.each(units.map(({ ucum }) => ucum))('%s reads on paper as on the terminal', (unit) => {
    for (const value of [0, 0.5, 1, 1.3, 2, 134, 2500, 12_000, 100_000, 1_234_567.5])
      expect(sayPlainQuantity(english, { value, unit })).toBe(formatQuantity({ value, unit }));
  });

  it.each(['1 d', '2 d', '1 wk', '1 mo', '3 mo', '1 a', '1 cycle', '25 cycles', '1 mo or 25 cycles', '4 h', '90 min'])(
    'every %s reads on paper as on the terminal',
    (text) => {
      const parsed = parseInterval(text);
      if (!parsed.ok) throw new Error(parsed.problem);
      expect(sayInterval(english, parsed.value)).toBe(formatInterval(parsed.value));
    },
  );
});

describe('in French', () => {
  const french = {
    language: 'fr-CA',
    phrases: {
      'unit.hour': { one: '{count}\u00a0heure', other: '{count}\u00a0heures' },
      'unit.sign': '{count}\u00a0{unit}',
      'unit.spore': { one: '{count} spore', other: '{count} spores' },
      'every.hour': { one: 'chaque heure', other: 'toutes les {count} heures' },
    },
  };

  it.each([
    [{ value: 1.5, unit: 'h' }, '1,5 heure'],
    [{ value: 2, unit: 'h' }, '2 heures'],
    [{ value: 1.3, unit: 'mbar' }, '1,3 mbar'],
    [{ value: 100_000, unit: '{spores}' }, '100 000 spores'],
  ])('%o', (quantity, said) => {
    expect(plain(sayPlainQuantity(french, quantity))).toBe(said);
  });

  it('leaves the number out for exactly one alone', () => {
    expect(sayInterval(french, { time: { value: 1, unit: 'h' } })).toBe('chaque heure');
    expect(sayInterval(french, { time: { value: 1.5, unit: 'h' } })).toBe('toutes les 1,5 heures');
  });
});
