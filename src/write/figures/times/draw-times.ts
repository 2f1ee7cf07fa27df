import { Canvas, drawingWidth, leading, smallType } from '../svg/canvas.js';
import { widthOf, wrapText } from '../svg/measure-text.js';
import type { TimeBar, TimesDrawing } from './model-times.js';

const labelType = { size: 8.5 };
const titleType = { size: 9.5, bold: true };
const valueType = { size: 8.5, bold: true };
const tickType = { size: smallType };

/** Where the axis begins on the page, and the least time on it in seconds. */
const left = 196;
const earliest = 10;
/** How far the line of a lower bound goes on, and how thick bars are. */
const onward = 14;
const thick = 6.5;

/** Bars on a logarithmic axis: full ones end where time is up, open ones where it is long enough. */
export function drawTimes({ groups, ticks, words }: TimesDrawing): string {
  const canvas = new Canvas();
  const bars = groups.flatMap((group) => group.bars);
  const longest = Math.max(...bars.map(({ seconds }) => seconds), ...ticks.map(({ seconds }) => seconds));
  const widest = Math.max(...bars.map(({ value }) => widthOf(value, valueType)));
  const right = drawingWidth - widest - 6;
  const scale = (right - left) / Math.log(longest / earliest);
  const at = (seconds: number) => left + Math.max(2, Math.log(Math.max(seconds, earliest) / earliest) * scale);
  const rows = layOut(groups);
  const top = 14;
  const end = top + rows.height;
  for (const { seconds, label } of ticks) {
    const x = at(seconds);
    canvas.line(
      [
        { x, y: top },
        { x, y: end },
      ],
      { width: 0.4, dash: '1 2.5' },
    );
    canvas.text(label, x, 8, { ...tickType, anchor: 'middle' });
    canvas.text(label, x, end + 11, { ...tickType, anchor: 'middle' });
  }
  canvas.line([
    { x: left, y: top },
    { x: left, y: end },
  ]);
  for (const { title, y } of rows.titles) {
    canvas.line(
      [
        { x: 0, y: top + y },
        { x: drawingWidth, y: top + y },
      ],
      { width: 0.5 },
    );
    canvas.lines([title], 0, top + y + 3, { ...titleType, on: true });
  }
  for (const { bar, lines, y, height } of rows.bars) {
    canvas.lines(lines, 0, top + y, labelType);
    drawBar(canvas, bar, at(bar.seconds), top + y + height / 2);
  }
  drawLegend(canvas, words, end + 20);
  return canvas.svg(end + 34);
}

function layOut(groups: TimesDrawing['groups']) {
  const titles: { title: string; y: number }[] = [];
  const bars: { bar: TimeBar; lines: string[]; y: number; height: number }[] = [];
  let y = 0;
  for (const { title, bars: own } of groups) {
    titles.push({ title, y });
    y += leading(titleType.size) + 6;
    for (const bar of own) {
      const lines = wrapText(bar.label, left - 10, labelType);
      const height = lines.length * leading(labelType.size);
      bars.push({ bar, lines, y, height });
      y += height + 4.5;
    }
    y += 3;
  }
  return { titles, bars, height: y };
}

function drawBar(canvas: Canvas, { value, sense }: TimeBar, x: number, middle: number): void {
  const wide = x - left;
  if (sense === 'at-most') canvas.bar(left, middle - thick / 2, wide, thick);
  else {
    canvas.box(left, middle - thick / 2 + 0.4, wide - 0.4, thick - 0.8, { width: 0.8 });
    canvas.arrow(
      [
        { x, y: middle },
        { x: x + onward, y: middle },
      ],
      { width: 0.8 },
    );
  }
  const start = sense === 'at-most' ? x + 4 : x + onward + 3;
  canvas.text(value, start, middle + valueType.size * 0.34, { ...valueType, on: true });
}

function drawLegend(canvas: Canvas, { atMost, atLeast }: TimesDrawing['words'], y: number): void {
  const middle = y + 6;
  canvas.bar(left, middle - thick / 2, 26, thick);
  canvas.text(atMost, left + 31, middle + 3, tickType);
  const next = left + 31 + widthOf(atMost, tickType) + 16;
  canvas.box(next, middle - thick / 2 + 0.4, 18, thick - 0.8, { width: 0.8 });
  canvas.arrow(
    [
      { x: next + 18, y: middle },
      { x: next + 18 + onward, y: middle },
    ],
    { width: 0.8 },
  );
  canvas.text(atLeast, next + 18 + onward + 5, middle + 3, tickType);
}
