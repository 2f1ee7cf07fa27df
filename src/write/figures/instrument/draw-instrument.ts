import { groupBy } from '../../text/group-by.js';
import { Canvas, drawingWidth, leading, smallType } from '../svg/canvas.js';
import { wrapText } from '../svg/measure-text.js';
import type { Choice, InstrumentDrawing } from './model-instrument.js';

const questionType = { size: 9, bold: true };
const wordsType = { size: 8.5 };
const moreType = { size: smallType };

/** The questions on the left, the lanes in the middle, on the right the answers with which the way ends. */
const edge = 1;
const questionWidth = 94;
const lanesLeft = 102;
const endsWidth = 98;
const endsLeft = drawingWidth - endsWidth - edge;
const lanesRight = endsLeft - 12;
/** Between two boxes side by side, between two lanes, and between two rows. */
const gap = 8;
const laneGap = 16;
const rowGap = 28;

interface Rect {
  x: number;
  y: number;
  width: number;
  height: number;
}

/** Draws question after question, the answers beside each, and lines from the answers to the next question's answers. */
export function drawInstrument({ classes, needs, cleaning, after }: InstrumentDrawing): string {
  const canvas = new Canvas();
  const lanes = laneColumns(needs.lanes.length, after);
  let number = 0;
  /** Draws the question of a row. */
  const ask = (question: string, y: number, rows: readonly (readonly Rect[])[]): number => {
    number += 1;
    const lines = wrapText(question, questionWidth - 14, questionType);
    canvas.text(`${number}`, edge, y + questionType.size, questionType);
    const end = canvas.lines(lines, edge + 13, y + 0.5, questionType);
    return Math.max(end, ...rows.flat().map((rect) => rect.y + rect.height));
  };

  const classBoxes = placeBeside(classes.boxes, lanesLeft, drawingWidth - edge, edge);
  drawChoices(canvas, classes.boxes, classBoxes);
  let y = ask(classes.question, edge, [classBoxes]) + rowGap;

  const laneBoxes = evenly(needs.lanes.flatMap((lane, index) => placeBeside([lane], ...spanOf(lanes, index), y)));
  const needEnds = placeBelow(needs.ends, y);
  drawChoices(canvas, needs.lanes, laneBoxes);
  drawEnds(canvas, needs.ends, needEnds);
  joinBySource(canvas, classBoxes, [
    ...laneBoxes.map((box, index) => ({ box, from: classes.boxes.map((each) => each.lanes.includes(index)) })),
    ...needEnds.slice(0, 1).map((box) => ({ box, from: classes.boxes.map(() => true) })),
  ]);
  const needsEnd = ask(needs.question, y, [laneBoxes, needEnds]);

  y = Math.max(bottomOf(laneBoxes) + rowGap, needsEnd + rowGap - 6);
  const cleanBoxes = placeBeside(cleaning.boxes, lanesLeft, lanesRight, y);
  const cleanEnds = placeBelow(cleaning.ends, y);
  drawChoices(canvas, cleaning.boxes, cleanBoxes);
  drawEnds(canvas, cleaning.ends, cleanEnds);
  joinRows(canvas, laneBoxes, [...cleanBoxes, ...cleanEnds.slice(0, 1)], y - 10);
  let before = needs.lanes.map(() => cleanBoxes);
  y = Math.max(ask(cleaning.question, y, [cleanBoxes]), bottomOf(cleanBoxes)) + rowGap;
  let last = Math.max(bottomOf(cleanEnds), y - rowGap);

  after.forEach(({ question, lanes: answers }, row) => {
    const placed = answers.map((own, index) => placeBeside(own, ...spanOf(lanes, index), y));
    const all = placed.flat();
    const height = Math.max(0, ...all.map((rect) => rect.height));
    const level = placed.map((boxes) => boxes.map((box) => ({ ...box, height })));
    const onward = answers.map((own, index) => (level[index] ?? []).filter((_, at) => own[at]?.ends === false));
    answers.forEach((own, index) => {
      const closed = (level[index] ?? []).filter((_, at) => own[at]?.ends === true);
      const [goOn, end] = [own.filter(({ ends }) => !ends), own.filter(({ ends }) => ends)];
      drawChoices(canvas, goOn, onward[index] ?? []);
      drawEnds(canvas, end, closed);
    });
    if (row === 0) joinRows(canvas, cleanBoxes, level.flat(), y - 10);
    else
      level.forEach((boxes, index) => {
        joinRows(canvas, before[index] ?? [], boxes, y - 10);
      });
    before = level.map((boxes, index) => (boxes.length > 0 ? (onward[index] ?? []) : (before[index] ?? [])));
    last = Math.max(last, ask(question, y, level));
    y = last + rowGap;
  });
  return canvas.svg(last + edge);
}

/** The lanes from left to right: one with more answers side by side gets more room. */
function laneColumns(count: number, after: InstrumentDrawing['after']): { x: number; width: number }[] {
  const weights = Array.from({ length: count }, (_, index) =>
    Math.max(1.25, ...after.map(({ lanes }) => lanes[index]?.length ?? 0)),
  );
  const room = lanesRight - lanesLeft - (count - 1) * laneGap;
  const sum = weights.reduce((total, each) => total + each, 0);
  let x = lanesLeft;
  return weights.map((weight) => {
    const lane = { x, width: (room * weight) / sum };
    x += lane.width + laneGap;
    return lane;
  });
}

function spanOf(lanes: readonly { x: number; width: number }[], index: number): [number, number] {
  const { x = lanesLeft, width = 0 } = lanes[index] ?? {};
  return [x, x + width];
}

function placeBeside(choices: readonly Choice[], left: number, right: number, y: number): Rect[] {
  const width = (right - left - (choices.length - 1) * gap) / Math.max(choices.length, 1);
  return evenly(choices.map((each, index) => ({ x: left + index * (width + gap), y, width, height: heightOf(each, width) })));
}

/** Boxes of one height. */
function evenly(boxes: readonly Rect[]): Rect[] {
  const height = Math.max(0, ...boxes.map((box) => box.height));
  return boxes.map((box) => ({ ...box, height }));
}

function placeBelow(choices: readonly Choice[], top: number): Rect[] {
  let y = top;
  return choices.map((each) => {
    const height = heightOf(each, endsWidth);
    const rect = { x: endsLeft, y, width: endsWidth, height };
    y += height + 5;
    return rect;
  });
}

function bottomOf(boxes: readonly Rect[]): number {
  return Math.max(0, ...boxes.map(({ y, height }) => y + height));
}

function linesOf({ words, more }: Choice, width: number): { words: string[]; more: string[] } {
  return { words: wrapText(words, width - 10, wordsType), more: wrapText(more, width - 10, moreType) };
}

function heightOf(choice: Choice, width: number): number {
  const { words, more } = linesOf(choice, width);
  return words.length * leading(wordsType.size) + more.length * leading(moreType.size) + 8;
}

function drawChoices(canvas: Canvas, choices: readonly Choice[], boxes: readonly Rect[]): void {
  choices.forEach((choice, index) => {
    const box = boxes[index];
    if (box === undefined) return;
    const { words, more } = linesOf(choice, box.width);
    canvas.box(box.x, box.y, box.width, box.height, {}, 4);
    const middle = box.x + box.width / 2;
    const top = box.y + (box.height - heightOf(choice, box.width)) / 2 + 3.5;
    const next = canvas.lines(words, middle, top, { ...wordsType, anchor: 'middle' });
    canvas.lines(more, middle, next, { ...moreType, italic: true, anchor: 'middle' });
  });
}

/** Boxes with a heavy foot: from here nothing leads on. */
function drawEnds(canvas: Canvas, choices: readonly Choice[], boxes: readonly Rect[]): void {
  choices.forEach((choice, index) => {
    const box = boxes[index];
    if (box === undefined) return;
    canvas.box(box.x, box.y, box.width, box.height);
    canvas.bar(box.x - 0.4, box.y + box.height - 1.5, box.width + 0.8, 3);
    const { words } = linesOf(choice, box.width);
    canvas.lines(words, box.x + 5, box.y + 3, wordsType);
  });
}

/** Joins each box with those of the row above that lead to it; those with the same boxes above them share their lines. */
function joinBySource(canvas: Canvas, above: readonly Rect[], targets: readonly { box: Rect; from: readonly boolean[] }[]): void {
  const groups = [...groupBy(targets, ({ from }) => from.join()).values()];
  groups.forEach((group, index) => {
    const from = above.filter((_, at) => group[0]?.from[at] === true);
    const boxes = group.map(({ box }) => box);
    const top = Math.min(...boxes.map(({ y }) => y));
    joinRows(canvas, from, boxes, top - 10 - index * 5, (index - (groups.length - 1) / 2) * 18);
  });
}

/** Lines from boxes down to a level, along it, and with heads down to the boxes below; `aside` moves where they begin. */
function joinRows(canvas: Canvas, from: readonly Rect[], to: readonly Rect[], level: number, aside = 0): void {
  if (from.length === 0 || to.length === 0) return;
  const style = { width: 0.9 };
  const middle = ({ x, width }: Rect) => x + width / 2;
  const starts = from.map((box) => middle(box) + aside);
  const [only] = starts;
  // One box above one box: straight down, where they lie that way.
  const isStraight = (box: Rect) => only !== undefined && starts.length === 1 && only > box.x + 8 && only < box.x + box.width - 8;
  const ends = to.map((box) => (to.length === 1 && isStraight(box) ? (only ?? middle(box)) : middle(box)));
  from.forEach((box, index) => {
    const x = starts[index] ?? 0;
    canvas.line(
      [
        { x, y: box.y + box.height },
        { x, y: level },
      ],
      style,
    );
  });
  const [left, right] = [Math.min(...starts, ...ends), Math.max(...starts, ...ends)];
  if (right > left)
    canvas.line(
      [
        { x: left, y: level },
        { x: right, y: level },
      ],
      style,
    );
  to.forEach((box, index) => {
    const x = ends[index] ?? 0;
    canvas.arrow(
      [
        { x, y: level },
        { x, y: box.y },
      ],
      style,
    );
  });
}
