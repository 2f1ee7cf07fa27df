import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { didYouMean, nearest } from '../../src/read/nearest.js';

describe('nearest', () => {
  it.each([
    ['item.holow', ['item.hollow', 'item.bore'], 'item.hollow'],
    ['Steel', ['brass', 'steel'], 'steel'],
    ['holding.longest-wait', ['load.longest-wait', 'holding.least'], 'load.longest-wait'],
    ['longest-wait', ['least', 'holding.longest-wait'], 'holding.longest-wait'],
    ['C', ['s', 'h', '°C'], '°C'],
    ['tap', ['tape', 'top'], 'tape'],
    ['cd', ['ca', 'cb'], undefined],
    ['ab', ['cd', 'ef'], undefined],
    ['silk', ['steel', 'brass'], undefined],
    ['anything', [], undefined],
    ['', ['a'], undefined],
  ])('%s among %j is %s', (name, known, expected) => {
    expect(nearest(name, known)).toBe(expected);
  });

  it('takes the first of two that are as near', () => {
    expect(nearest('wait-1', ['wait-2', 'wait-3'])).toBe('wait-2');
  });

  it('finds a known name whatever else is known, and never one that is not known', () => {
    const names = fc.array(fc.stringMatching(/^[a-z.-]{1,12}$/), { minLength: 1 });
    fc.assert(
      fc.property(names, fc.string(), (known, name) => {
        expect(nearest(known[0] ?? '', known)?.toLowerCase()).toBe(known[0]);
        const found = nearest(name, known);
        if (found !== undefined) expect(known).toContain(found);
      }),
    );
  });

  it('does not measure words of any length', () => {
    expect(nearest('x'.repeat(1_000_000), ['x'])).toBeUndefined();
  });
});

it('didYouMean asks, or says nothing', () => {
  expect(didYouMean('stell', ['steel'])).toBe('did you mean `steel`?');
  expect(didYouMean('gold', ['steel'])).toBeUndefined();
});
