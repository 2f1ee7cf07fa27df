import type { Table, TableRow } from 'mdast';
import { toString as textOf } from 'mdast-util-to-string';
import type { TableData, TableRowData } from './data.js';
import { type Ink, takeAnchors } from './ink.js';
import { wordsOf } from './words.js';

/** Longest text of something that may not be torn apart by the end of a page. A page holds four times as much. */
const longest = 1400;

/** Whether something is short enough to be kept on one page. */
export function isShort(text: string): boolean {
  return text.length <= longest;
}

/** A table as data. Widths are relative: `2 3 5`. */
export function tableOf({ align, children }: Table, ink: Ink, look = 'plain', widths?: string): TableData {
  const [head, ...rows] = children;
  const columns = head?.children.length ?? 1;
  const shares = widths?.split(' ').map(Number) ?? [];
  return {
    t: 'table',
    look,
    widths: Array.from({ length: columns }, (_, index) => shares[index] ?? 1),
    align: Array.from({ length: columns }, (_, index) => align?.[index] ?? null),
    head: (head?.children ?? []).map((cell) => wordsOf(cell.children, ink)),
    rows: rows.map((row) => rowOf(row, columns, ink)),
  };
}

function rowOf(row: TableRow, columns: number, ink: Ink): TableRowData {
  const cells = row.children.map((cell) => wordsOf(cell.children, ink));
  const [anchor = null] = takeAnchors(row, ink);
  return {
    anchor,
    change: row.data?.change ?? null,
    keep: row.children.every((cell) => isShort(textOf(cell))),
    group: row.data?.is === 'group',
    cells: Array.from({ length: columns }, (_, index) => cells[index] ?? []),
  };
}
