import { Canvas, drawingWidth, leading, smallType } from '../svg/canvas.js';
import { wrapText } from '../svg/measure-text.js';
import type { YearDrawing, YearGroup, YearRow } from './model-year.js';

const titleType = { size: 9, bold: true };
const rowType = { size: 8.5 };
const small = { size: smallType };

/** Where the months begin, how wide one is, and how large the box to tick is. */
const left = 222;
const month = (drawingWidth - left) / 12;
const box = 7;
const top = 14;
/** The room between rows; more rows than so many stand closer, to stay on one page. */
const [wideGap, narrowGap, manyRows] = [3, 1.6, 30];

interface PlacedGroup {
  y: number;
  title: string[];
  often: string[];
  rows: { row: YearRow; lines: string[]; y: number; middle: number }[];
  end: number;
}

/** A row a task and a column a month, with a box to tick for each time that a task falls due. */
export function drawYear({ months, groups }: YearDrawing): string {
  const canvas = new Canvas();
  const placed: PlacedGroup[] = [];
  const count = groups.reduce((sum, { rows }) => sum + rows.length, 0);
  const gap = count > manyRows ? narrowGap : wideGap;
  for (const group of groups) placed.push(placeGroup(group, placed.at(-1)?.end ?? top, gap));
  const end = placed.at(-1)?.end ?? top;
  drawMonths(canvas, months, end);
  for (const group of placed) drawGroup(canvas, group);
  canvas.line([
    { x: 0, y: end },
    { x: drawingWidth, y: end },
  ]);
  return canvas.svg(end + 1);
}

function placeGroup({ title, often, rows }: YearGroup, y: number, gap: number): PlacedGroup {
  const titleLines = wrapText(title, left - 8, titleType);
  const oftenLines = wrapText(often, drawingWidth - left - 8, small);
  let next = y + Math.max(titleLines.length * leading(titleType.size), oftenLines.length * leading(small.size)) + 4;
  const placed = rows.map((row) => {
    const lines = wrapText(row.title, left - 14, rowType);
    const at = next;
    next += lines.length * leading(rowType.size) + gap;
    return { row, lines, y: at + 1.6, middle: (at + next) / 2 };
  });
  return { y, title: titleLines, often: oftenLines, rows: placed, end: next + 3 };
}

function drawMonths(canvas: Canvas, months: readonly string[], end: number): void {
  months.forEach((name, index) => {
    const x = left + index * month;
    canvas.text(name, x + month / 2, 9, { ...small, anchor: 'middle' });
    canvas.line(
      [
        { x, y: 2 },
        { x, y: end },
      ],
      index % 3 === 0 ? { width: 0.5 } : { width: 0.4, dash: '0.8 2.4' },
    );
  });
  canvas.line(
    [
      { x: drawingWidth - 0.25, y: 2 },
      { x: drawingWidth - 0.25, y: end },
    ],
    { width: 0.5 },
  );
}

function drawGroup(canvas: Canvas, { y, title, often, rows }: PlacedGroup): void {
  canvas.line([
    { x: 0, y },
    { x: drawingWidth, y },
  ]);
  canvas.lines(title, 0, y + 2.5, titleType);
  canvas.lines(often, left + 4, y + 3, { ...small, italic: true, on: true });
  for (const { row, lines, y: at, middle } of rows) {
    canvas.lines(lines, 6, at, rowType);
    drawTimes(canvas, row, middle);
  }
}

function drawTimes(canvas: Canvas, { span, rare }: YearRow, middle: number): void {
  for (let first = 0; first < 12; first += span) {
    const [start, end] = [left + first * month + 3, left + (first + span) * month - 3];
    if (span > 1) {
      canvas.line(
        [
          { x: start, y: middle },
          { x: end, y: middle },
        ],
        rare === undefined ? {} : { dash: '3 2' },
      );
      for (const x of [start, end])
        canvas.line([
          { x, y: middle - 2.5 },
          { x, y: middle + 2.5 },
        ]);
    }
    const x = (start + end) / 2;
    if (rare === undefined) canvas.box(x - box / 2, middle - box / 2, box, box);
    else canvas.text(rare, x, middle + 2.8, { ...small, anchor: 'middle', on: true });
  }
}
