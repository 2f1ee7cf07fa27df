import type { RootContent, Table } from 'mdast';
import { toString as textOf } from 'mdast-util-to-string';
import { walk } from '../../tree/walk.js';
import { mm } from './page.js';
import { columnsOf } from './print-table.js';

/** Least and greatest height of a row to write in, in twips. */
const [least, greatest] = [mm(4.6), mm(10)];

/** Room that a sheet takes beside its rows and its words: heading, boxes for the dates, gaps. Millimeters. */
const fixed = 25;

/** Millimeters: height of a line of words on a sheet, space around a paragraph, and a letter of good width. */
const [lineHeight, space, letter] = [3.85, 2.2, 1.55];

/**
 * The height at which the empty rows of sheets fill the page that they share, in twips; `undefined` where they do not fit. It
 * rests on how many lines the words above and below are likely to take, on the safe side.
 *
 * @param width room between the margins, in twips
 * @param height room for all the sheets, in twips
 */
export function rowHeightOf(sheets: readonly RootContent[], width: number, height: number): number | undefined {
  let [rows, words] = [0, 0];
  walk({ type: 'root', children: [...sheets] }, (node, parents) => {
    const around = parents.at(-1);
    if (node.type === 'paragraph') words += linesOf(textOf(node), width) * lineHeight + space;
    if (node.type !== 'table' || around?.type !== 'containerDirective' || around.attributes?.['look'] !== 'sheet') return;
    rows += node.children.length - 1;
    words += linesOfHead(node, around.attributes?.['widths'] ?? '', width) * lineHeight;
  });
  const each = Math.floor((height - mm(fixed * sheets.length + words)) / Math.max(1, rows));
  return each < least ? undefined : Math.min(greatest, each);
}

/** The height of rows where they take more than their page. */
export const leastRowHeight = least;

/** Lines of the highest cell of the head. */
function linesOfHead({ children: [head] }: Table, widths: string, width: number): number {
  const cells = head?.children ?? [];
  const columns = columnsOf(widths, cells.length, width);
  const padding = mm(2.4);
  return Math.max(
    1,
    ...cells.map((cell, index) => {
      const pieces = cell.children.map((node) => (node.type === 'break' ? '\n' : textOf(node))).join('');
      const room = (columns[index] ?? width) - padding;
      return pieces.split('\n').reduce((sum, piece) => sum + linesOf(piece, room), 0);
    }),
  );
}

/** Lines that a text takes when it is set word by word in a width of so many twips. */
function linesOf(text: string, width: number): number {
  const room = Math.max(1, width / mm(letter));
  let [lines, used] = [1, 0];
  for (const { length } of text.split(/\s+/)) {
    if (used > 0 && used + 1 + length > room) [lines, used] = [lines + 1, 0];
    used += length + (used > 0 ? 1 : 0);
    while (used > room) [lines, used] = [lines + 1, used - room];
  }
  return lines;
}
