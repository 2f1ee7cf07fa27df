import type { Element, ElementContent } from 'hast';
import { h } from 'hastscript';
import type { AlignType, Table, TableRow } from 'mdast';
import { toString as textOf } from 'mdast-util-to-string';
import { anchorOf } from '../../tree/nodes.js';
import { renderPhrase } from './render-phrase.js';

interface TableLook {
  /** Class of the table. */
  look?: string | undefined;
  /** Relative widths of its columns: `2 3 5`. */
  widths?: string | undefined;
}

/** A table with its head repeated on every page that it goes on to. */
export function renderTable({ align, children }: Table, { look, widths }: TableLook): Element {
  const [head, ...rows] = children;
  return h('table', { className: look }, [
    ...columnsOf(widths),
    ...(head === undefined ? [] : [h('thead', [renderRow(head, align ?? [], 'th')])]),
    ...groupRows(rows).map((group) =>
      h(
        'tbody',
        group.map((row) => renderRow(row, align ?? [], 'td')),
      ),
    ),
  ]);
}

function columnsOf(widths: string | undefined): Element[] {
  if (widths === undefined) return [];
  const shares = widths.split(' ').map(Number);
  const sum = shares.reduce((a, b) => a + b, 0);
  return [
    h(
      'colgroup',
      shares.map((share) => h('col', { style: `width:${((100 * share) / sum).toFixed(2)}%` })),
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

function renderRow(row: TableRow, align: readonly AlignType[], tag: 'th' | 'td'): Element {
  const home = row.data?.marks?.find(({ home }) => home);
  const [first] = row.children;
  if (isGroup(row) && first !== undefined)
    return h('tr.group', [h('th', { colSpan: row.children.length, scope: 'rowgroup' }, renderPhrase(first.children))]);
  const cells = row.children.map((cell, index): ElementContent => {
    const right = align[index] === 'right';
    const empty = tag === 'th' && textOf(cell) === '';
    const scope = tag === 'th' && !empty ? 'col' : undefined;
    return h(empty ? 'td' : tag, { className: right ? 'right' : undefined, scope }, renderPhrase(cell.children));
  });
  return h('tr', { id: home && anchorOf(home) }, cells);
}
