import {
  AlignmentType,
  type FileChild,
  HeightRule,
  type IParagraphOptions,
  Table,
  TableCell,
  TableLayoutType,
  TableRow,
  VerticalAlign,
  WidthType,
} from 'docx';
import type { TableRow as Row, Table as TableNode } from 'mdast';
import { mm } from './page.js';
import type { Change, Place, Press } from './press.js';
import { printParagraph } from './print-paragraph.js';
import { tableStyle } from './table-styles.js';

interface TableLook {
  /** What kind of table it is: `signature`, `sheet`. */
  look?: string;
  /** Relative widths of its columns: `2 3 5`. */
  widths?: string;
}

/** Tables whose words are small, to keep them on few pages. */
const small = ['register', 'index', 'limits', 'programs', 'sources', 'sheet'];

/** Heights of rows to write in, in twips. */
const writing = { signature: mm(11), fill: mm(8) } as const;

/** A table with its head repeated on every page that it goes on to; no row is torn apart. */
export function printTable(node: TableNode, { look = '', widths = '' }: TableLook, press: Press, place: Place): FileChild[] {
  const columns = columnsOf(widths, node.children[0]?.children.length ?? 1, place.width);
  const form = look === 'sheet' || look === 'fill';
  const rows = node.children.map((row, index) => printRow(row, index === 0, node, { look, columns }, press, place));
  return [
    new Table({
      rows,
      style: form ? tableStyle.form : tableStyle.ruled,
      tableLook: { firstRow: !form, lastRow: false, firstColumn: false, lastColumn: false, noHBand: true, noVBand: true },
      width: { size: columns.reduce((a, b) => a + b, 0), type: WidthType.DXA },
      columnWidths: columns,
      layout: TableLayoutType.FIXED,
    }),
  ];
}

interface Shape {
  look: string;
  /** Widths of columns in twips. */
  columns: readonly number[];
}

/** Shares of a width, rounded so that they add up to it. */
export function columnsOf(widths: string, count: number, width: number): number[] {
  const given = widths
    .split(' ')
    .map(Number)
    .filter((share) => share > 0);
  const shares = given.length === count ? given : Array.from({ length: count }, () => 1);
  const sum = shares.reduce((a, b) => a + b, 0);
  let [before, edge] = [0, 0];
  return shares.map((share) => {
    before += share;
    const next = Math.round((width * before) / sum);
    const own = next - edge;
    edge = next;
    return own;
  });
}

function printRow(row: Row, head: boolean, table: TableNode, shape: Shape, press: Press, place: Place): TableRow {
  const change = changeOf(row) ?? place.change;
  const group = row.data?.is === 'group';
  const tracked = () => ({ ...press.changedBy, id: press.nextChange() });
  const style = styleOf(shape.look, head, group);
  const cells = group ? row.children.slice(0, 1) : row.children;
  return new TableRow({
    // A head by itself, as of the boxes above a sheet, has no table to stand over.
    ...(head && table.children.length > 1 && { tableHeader: true }),
    cantSplit: true,
    ...heightOf(head, shape, place),
    ...(change === 'inserted' && { insertion: tracked() }),
    ...(change === 'deleted' && { deletion: tracked() }),
    children: cells.map((cell, index) => {
      const options: IParagraphOptions = {
        style,
        ...(table.align?.[index] === 'right' && !group && { alignment: AlignmentType.RIGHT }),
      };
      const holders = index === 0 ? [cell, row] : [cell];
      return new TableCell({
        ...(group && { columnSpan: row.children.length }),
        ...(shape.look === 'signature' && { verticalAlign: VerticalAlign.BOTTOM }),
        width: { size: group ? shape.columns.reduce((a, b) => a + b, 0) : (shape.columns[index] ?? 0), type: WidthType.DXA },
        children: [printParagraph({ words: cell.children, holders, change }, press, options)],
      });
    }),
  });
}

function changeOf({ data }: Row): Change | undefined {
  return data?.change === 'inserted' || data?.change === 'deleted' ? data.change : undefined;
}

function styleOf(look: string, head: boolean, group: boolean): string {
  if (head) return look === 'sheet' ? 'SheetHead' : 'TableHead';
  if (group) return 'TableGroup';
  return small.includes(look) ? 'TableSmall' : 'TableText';
}

/** Rows to write in are high enough for a hand. */
function heightOf(head: boolean, { look }: Shape, { rowHeight }: Place) {
  const value =
    look === 'sheet' && !head
      ? rowHeight
      : look === 'signature' && !head
        ? writing.signature
        : look === 'fill'
          ? writing.fill
          : undefined;
  return value === undefined ? {} : { height: { value, rule: HeightRule.ATLEAST } };
}
