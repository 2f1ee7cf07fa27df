import { Canvas, drawingWidth, leading } from '../svg/canvas.js';
import { wrapText } from '../svg/measure-text.js';
import type { FailureAnswer, FailureDrawing } from './model-failure.js';

const questionType = { size: 9, bold: true };
const type = { size: 8.5 };

/** The columns: questions, answers, what comes next; and the gap between two of them. */
const edge = 1;
const questionWidth = 96;
const gap = 26;
const answerLeft = edge + questionWidth + gap;
const answerWidth = 176;
const nextLeft = answerLeft + answerWidth + gap;
const nextWidth = drawingWidth - edge - nextLeft;
/** Between two answers, and between the answers of two questions. */
const between = 6;
const apart = 16;

interface PlacedAnswer {
  words: string[];
  next: { lines: string[]; always: boolean }[];
  height: number;
  y: number;
}

/** Each question with its answers beside it, and beside each answer the procedure that follows. */
export function drawFailure({ questions }: FailureDrawing): string {
  const canvas = new Canvas();
  let y = edge;
  questions.forEach(({ question, answers }, index) => {
    if (index > 0) {
      canvas.line(
        [
          { x: 0, y: y - apart / 2 },
          { x: drawingWidth, y: y - apart / 2 },
        ],
        { width: 0.5 },
      );
    }
    const lines = wrapText(question, questionWidth, questionType);
    const tall = lines.length * leading(questionType.size);
    const placed = placeAnswers(answers, y);
    const end = Math.max(placed.at(-1)?.y ?? y, (placed.at(-1)?.y ?? y) + (placed.at(-1)?.height ?? 0), y + tall);
    canvas.lines(lines, edge, y + (end - y - tall) / 2, questionType);
    drawFork(canvas, placed, (y + end) / 2);
    for (const each of placed) drawAnswer(canvas, each);
    y = end + apart;
  });
  return canvas.svg(y - apart + edge);
}

function placeAnswers(answers: readonly FailureAnswer[], top: number): PlacedAnswer[] {
  let y = top;
  return answers.map(({ words, next }) => {
    const lines = wrapText(words, answerWidth - 12, type);
    const titles = next.map(({ title, always }) => ({ lines: wrapText(title, nextWidth - 12, type), always }));
    const height = Math.max(
      tallOf(lines),
      titles.reduce((sum, each) => sum + tallOf(each.lines) + 4, -4),
    );
    const placed = { words: lines, next: titles, height, y };
    y += height + between;
    return placed;
  });
}

function tallOf(lines: readonly string[]): number {
  return lines.length * leading(type.size) + 7;
}

function middleOf({ y, height }: PlacedAnswer): number {
  return y + height / 2;
}

/** From the question to each of its answers. */
function drawFork(canvas: Canvas, placed: readonly PlacedAnswer[], from: number): void {
  const [first, last] = [placed[0], placed.at(-1)];
  if (first === undefined || last === undefined) return;
  const stem = answerLeft - gap / 2 - 2;
  canvas.line(
    [
      { x: edge + questionWidth + 3, y: from },
      { x: stem, y: from },
    ],
    { width: 0.9 },
  );
  canvas.line(
    [
      { x: stem, y: Math.min(from, middleOf(first)) },
      { x: stem, y: Math.max(from, middleOf(last)) },
    ],
    { width: 0.9 },
  );
  for (const each of placed)
    canvas.arrow(
      [
        { x: stem, y: middleOf(each) },
        { x: answerLeft, y: middleOf(each) },
      ],
      { width: 0.9 },
    );
}

function drawAnswer(canvas: Canvas, answer: PlacedAnswer): void {
  const { words, next, height, y } = answer;
  canvas.box(answerLeft, y, answerWidth, height, {}, 4);
  canvas.lines(words, answerLeft + 6, y + (height - tallOf(words)) / 2 + 3, type);
  let at = y + (height - next.reduce((sum, each) => sum + tallOf(each.lines) + 4, -4)) / 2;
  for (const { lines, always } of next) {
    const middle = at + tallOf(lines) / 2;
    canvas.box(nextLeft, at, nextWidth, tallOf(lines));
    canvas.lines(lines, nextLeft + 6, at + 3, type);
    canvas.arrow(
      [
        { x: answerLeft + answerWidth, y: middle },
        { x: nextLeft, y: middle },
      ],
      always ? { width: 0.9 } : { width: 0.9, dash: '3 2' },
    );
    at += tallOf(lines) + 4;
  }
}
