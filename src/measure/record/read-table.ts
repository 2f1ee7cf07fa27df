import { CsvError, parse } from 'csv-parse/sync';
import { type RecordProblem, RecordRefused } from './cycle-record.js';

const largestFile = 2_000_000;
const mostLines = 50_000;

/** The cells of a file, with where each stands in it. */
export interface Table {
  /** Between cells; with a comma a decimal mark can only be a point. */
  separator: ',' | ';';
  /** Every line that is not blank. */
  rows: readonly Row[];
}

export interface Row {
  line: number;
  cells: readonly string[];
  /** Column at which a cell starts, from 1. */
  columnOf(cell: number): number;
}

/**
 * Takes a file apart into cells: UTF-8 with or without byte order mark, lines ended in any way, commas or semicolons
 * between cells, quotes where somebody likes them. Blank lines don't count. The last line must be ended like the others:
 * a file that was cut off in the middle of a number looks whole otherwise.
 *
 * @throws RecordRefused E701, E702 or E703.
 */
export function readTable(bytes: Uint8Array): Table {
  if (bytes.length > largestFile)
    refuse('E701', 1, 1, `the file has ${bytes.length} bytes, at most ${largestFile} are read`, 'record one cycle in a file');
  const lines = decode(bytes).split('\n');
  if (lines.length > mostLines)
    refuse('E701', mostLines, 1, `the file has more than ${mostLines} lines`, 'record one cycle in a file');
  const numbered = lines.map((text, index) => ({ text, line: index + 1 })).filter(({ text }) => text.trim() !== '');
  const [first] = numbered;
  if (first === undefined) refuse('E703', 1, 1, 'the file is empty', 'write a line of headings, then one line a reading');
  const last = numbered.at(-1) ?? first;
  if (last.line === lines.length)
    refuse(
      'E703',
      last.line,
      last.text.length + 1,
      'the last line is not finished',
      'the file was cut off, or lacks a line break',
    );
  for (const { text, line } of numbered)
    if (text.split('"').length % 2 === 0)
      refuse('E703', line, text.indexOf('"') + 1, 'a quote is not closed on its line', 'a cell stands on one line');
  const separator = outsideQuotes(first.text).includes(';') ? ';' : ',';
  const cells = split(numbered, separator);
  const rows = numbered.map(({ text, line }, index): Row => {
    return { line, cells: cells[index] ?? [], columnOf: (cell) => startOfCell(text, separator, cell) };
  });
  const width = rows[0]?.cells.length ?? 0;
  const odd = rows.find((row) => row.cells.length !== width);
  if (odd !== undefined) {
    const message = `this line has ${odd.cells.length} cells, the headings have ${width}`;
    const help = separator === ',' ? 'a decimal comma needs semicolons between cells' : 'each line has a cell under each heading';
    refuse('E703', odd.line, 1, message, help);
  }
  refuseOddBlanks(numbered.slice(1), separator);
  return { separator, rows };
}

/**
 * Blanks around cells are passed over where a whole column has them alike. Where one cell has others, a digit may be lost:
 * ` 3.2` may have been `93.2`.
 */
function refuseOddBlanks(lines: readonly { text: string; line: number }[], separator: string): void {
  const [first] = lines;
  const blanksOf = (text: string) => text.split(separator).map((cell) => cell.length - cell.trim().length);
  if (first === undefined || lines.some(({ text }) => text.includes('"'))) return;
  const usual = blanksOf(first.text);
  for (const { text, line } of lines) {
    const odd = blanksOf(text).findIndex((blanks, cell) => blanks !== usual[cell]);
    if (odd === -1) continue;
    const message = 'this cell has other blanks around it than those above';
    refuse('E703', line, startOfCell(text, separator, odd), message, 'take the blanks out; is a digit missing?');
  }
}

function decode(bytes: Uint8Array): string {
  const decoder = new TextDecoder('utf-8', { fatal: true });
  let text: string;
  try {
    text = decoder.decode(bytes);
  } catch {
    refuse('E702', lineOfBadByte(bytes), 1, 'these bytes are not UTF-8', 'save the file as UTF-8');
  }
  const plain = text.replace(/\r\n?/g, '\n');
  const control = /[^\P{Cc}\n]/u.exec(plain);
  if (control !== null) {
    const before = plain.slice(0, control.index).split('\n');
    const isTab = control[0] === '\t';
    const help = isTab ? 'write commas or semicolons between cells' : 'the file is damaged, or no text';
    refuse('E702', before.length, (before.at(-1) ?? '').length + 1, isTab ? 'a tab' : 'a control character', help);
  }
  return plain;
}

/** The first line that cannot be decoded. No byte of a longer character is a line feed. */
function lineOfBadByte(bytes: Uint8Array): number {
  let start = 0;
  for (let line = 1; start <= bytes.length; line += 1) {
    const end = bytes.indexOf(10, start);
    const stop = end === -1 ? bytes.length : end;
    try {
      new TextDecoder('utf-8', { fatal: true }).decode(bytes.subarray(start, stop));
    } catch {
      return line;
    }
    start = stop + 1;
  }
  return 1;
}

function split(lines: readonly { text: string; line: number }[], separator: string): string[][] {
  try {
    return parse(lines.map(({ text }) => text).join('\n'), { delimiter: separator, relax_column_count: true, trim: true });
  } catch (error) {
    if (!(error instanceof CsvError)) throw error;
    const at = lines[Number(error['lines'] ?? 1) - 1] ?? lines[0];
    refuse(
      'E703',
      at?.line ?? 1,
      (at?.text.indexOf('"') ?? 0) + 1,
      'a quote in the middle of a cell',
      'quote whole cells, or none',
    );
  }
}

function outsideQuotes(text: string): string {
  return text.replace(/"[^"]*"/g, '');
}

function startOfCell(text: string, separator: string, cell: number): number {
  let [seen, quoted] = [0, false];
  for (const [index, letter] of [...text].entries()) {
    if (seen === cell) return index + 1 + (/^\s*/.exec([...text].slice(index).join(''))?.[0].length ?? 0);
    if (letter === '"') quoted = !quoted;
    else if (letter === separator && !quoted) seen += 1;
  }
  return [...text].length + 1;
}

function refuse(code: RecordProblem['code'], line: number, column: number, message: string, help: string): never {
  throw new RecordRefused([{ code, line, column, message, help }]);
}
