import { describe, expect, it } from 'vitest';
import { countsByItself } from '../../../src/write/print/docx/numbering.js';
import { columnsOf } from '../../../src/write/print/docx/print-table.js';

const section = (number: string) => ({ number, depth: number.includes('.') ? (2 as const) : (1 as const) });

describe('numbers of headings', () => {
  it.each([
    [['1', '1.1', '1.2', '2', '2.1', 'A', 'A.1', 'B', 'C', 'C.1'], true],
    [['A', 'A.1', 'B'], true],
    [[], true],
    [['1', '3'], false],
    [['1', '1.2'], false],
    [['2'], false],
    [['1', 'B'], false],
    [['4.2', 'B.1'], false],
    [['A', '1'], false],
  ])('%j: Word counts by itself: %s', (numbers, counted) => {
    expect(countsByItself(numbers.map(section))).toBe(counted);
  });
});

describe('widths of columns', () => {
  it.each([
    ['1 2 1', 3, 1000, [250, 500, 250]],
    ['1 1 1', 3, 100, [33, 34, 33]],
    ['', 2, 99, [50, 49]],
    ['1 x', 2, 100, [50, 50]],
    ['5 5', 3, 90, [30, 30, 30]],
  ])('%j for %i columns of %i', (widths, count, width, columns) => {
    expect(columnsOf(widths, count, width)).toEqual(columns);
  });
});
