import { expect, it } from 'vitest';
import { codesExplained, codesReported, codesTriggered } from './codes.js';

it('finds codes in the sources', () => {
  expect(codesReported().length).toBeGreaterThan(40);
});

it('every code that the sources report is triggered by a case, and no case names another', () => {
  expect(codesTriggered()).toEqual(codesReported());
});

it('every code stands once in the guide for developers, in order, and no other', () => {
  expect(codesExplained().map(({ code }) => code)).toEqual(codesReported());
});

it('every code in the guide says what it is for and what triggers it', () => {
  for (const { code, cells } of codesExplained())
    expect(
      cells.map((cell) => cell.length > 5),
      code,
    ).toEqual([true, true]);
});
