import type { Element, ElementContent } from 'hast';
import { h } from 'hastscript';
import type { AlignType, Table, TableRow } from 'mdast';
import { toString as textOf } from 'mdast-util-to-string';
import { anchorOf } from '../../tree/nodes.js';
import type { Ink } from './ink.js';
import { markChange } from './render-change.js';
import { renderPhrase } from './render-phrase.js';

interface TableLook {
  /** Class of the table. */
  look?: string | undefined;
  /** Relative widths of its columns: `2 3 5`. */
  widths?: string | undefined;
}

/** Tables to be filled in: their first column does not name the rows. */
const blank = ['sheet', 'fill', 'signature'];

/**
 * A table with its head repeated on every page that it goes on to. Its first column names the rows. A head without rows is
 * a row of boxes to fill in.
 */
export function renderTable({ align, children }: Table, { look, widths }: TableLook, ink: Ink): Element {
  const [head, ...rows] = children;
  const named = look === undefined || !blank.includes(look);
  const columns = align ?? [];
  const className = [look, widths === undefined ? undefined : ink.widths.classOf(widths)].filter((each) => each !== undefined);
  if (head === undefined) return h('table', { className });
  return h('table', { className }, [
    ...columnsOf(widths),
    ...(rows.length === 0
      ? [h('tbody', [renderRow(head, columns, 'none', ink)])]
      : [h('thead', [renderRow(head, columns, 'head', ink)])]),
    ...groupRows(rows).map((group) =>
      h(
        'tbody',
        group.map((row) => markChange(row, renderRow(row, columns, named ? 'named' : 'none', ink), ink)),
      ),
    ),
  ]);
}

function columnsOf(widths: string | undefined): Element[] {
  return widths === undefined
    ? []
    : [
        h(
          'colgroup',
          widths.split(' ').map(() => h('col')),
        ),
      ];
}

/** A row that names a group begins a table body of its own. */
function groupRows(rows: readonly TableRow[]): TableRow[][] {
  const groups: TableRow[][] = [];
  for (const row of rows) {
    if (isGroup(row) || groups.length === 0) groups.push([row]);
    else groups.at(-1)?.push(row);
  }
  return groups;
}

function isGroup(row: TableRow): boolean {
  return row.data?.is === 'group';
}

function renderRow(row: TableRow, align: readonly AlignType[], headers: 'head' | 'named' | 'none', ink: Ink): Element {
  const home = row.data?.marks?.find(({ home }) => home);
  const id = home && anchorOf(home);
  const [first] = row.children;
  if (isGroup(row) && first !== undefined)
    return h('tr.group', { id }, [
      h('th', { colSpan: row.children.length, scope: 'rowgroup' }, renderPhrase(first.children, ink)),
    ]);
  const cells = row.children.map((cell, index): ElementContent => {
    const className = align[index] === 'right' ? 'right' : undefined;
    const heads = textOf(cell) !== '' && (headers === 'head' || (headers === 'named' && index === 0));
    if (!heads) return h('td', { className }, renderPhrase(cell.children, ink));
    return h('th', { className, scope: headers === 'head' ? 'col' : 'row' }, renderPhrase(cell.children, ink));
  });
  return h('tr', { id }, cells);
}
