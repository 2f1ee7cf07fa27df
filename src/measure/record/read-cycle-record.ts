import { inBaseUnit } from '../quantity.js';
import {
  type CycleRecord,
  inTicks,
  type PressureChannel,
  type RecordProblem,
  RecordRefused,
  type TemperatureChannel,
} from './cycle-record.js';
import { findGaps } from './find-gaps.js';
import { type Heading, readHeadings } from './read-headings.js';
import { type Row, readTable, type Table } from './read-table.js';
import { type Moment, readMoment } from './read-time.js';

export type ReadRecord = { ok: true; record: CycleRecord } | { ok: false; problems: readonly RecordProblem[] };

/** Fewer readings than this are no record. */
const fewest = 3;
/** Problems beyond these say nothing new. */
const mostProblems = 20;

/**
 * Reads the record of one cycle from a file of comma or semicolon separated values. It either makes sense from the first to
 * the last byte or is refused: no number comes out of a file in which something is wrong.
 *
 * What it cannot know: a damaged digit that leaves a number like its neighbours, and whole lines missing at the end.
 */
export function readCycleRecord(bytes: Uint8Array): ReadRecord {
  try {
    return { ok: true, record: read(readTable(bytes)) };
  } catch (error) {
    if (error instanceof RecordRefused) return { ok: false, problems: error.problems.slice(0, mostProblems) };
    throw error;
  }
}

function read(table: Table): CycleRecord {
  const [first, ...rows] = table.rows;
  if (first === undefined) throw new RangeError('a table has a line of headings');
  const headings = readHeadings(first);
  if (rows.length < fewest) {
    const message = `there are ${rows.length} readings, a record has at least ${fewest}`;
    const help = 'check whether the file is complete';
    throw new RecordRefused([{ code: 'E711', line: rows.at(-1)?.line ?? first.line, column: 1, message, help }]);
  }
  const cells = new Cells(table);
  const seconds =
    headings.flatMap((heading, at) => (heading.kind === 'time' ? [readTimes(cells, rows, heading, at)] : []))[0] ?? [];
  const columns = headings.map((heading, at) => (heading.kind === 'time' ? [] : readNumbers(cells, rows, heading, at)));
  if (cells.problems.length > 0) throw new RecordRefused(inOrder(cells.problems));
  const gaps = findGaps(
    seconds,
    rows.map(({ line, columnOf }) => ({ line, column: columnOf(headings.findIndex(({ kind }) => kind === 'time')) })),
  );
  if (gaps.length > 0) throw new RecordRefused(gaps);
  const start = seconds[0] ?? 0;
  const [worst, ...others] = headings.flatMap((heading, at): TemperatureChannel[] =>
    heading.kind === 'temperature' ? [{ name: heading.name, celsius: columns[at] ?? [] }] : [],
  );
  if (worst === undefined) throw new RangeError('headings hold a temperature');
  const [pressure] = headings.flatMap((heading, at): PressureChannel[] =>
    heading.kind === 'pressure' ? [{ name: heading.name, against: heading.against, kilopascals: columns[at] ?? [] }] : [],
  );
  return {
    seconds: seconds.map((each) => Number((each - start).toFixed(6))),
    temperatures: [worst, ...others],
    ...(pressure && { pressure }),
  };
}

/** Reads cells and keeps what was wrong with them. */
class Cells {
  readonly problems: RecordProblem[] = [];
  private mark: '.' | ',' | undefined;

  constructor(private readonly table: Table) {}

  report(code: RecordProblem['code'], row: Row, at: number, message: string, help: string): void {
    this.problems.push({ code, line: row.line, column: row.columnOf(at), message, help });
  }

  /** The text of a cell that is not empty. */
  text(row: Row, at: number): string | undefined {
    const text = row.cells[at] ?? '';
    if (text !== '') return text;
    this.report('E706', row, at, 'a reading is missing', 'a record has a value in every cell');
    return undefined;
  }

  /** A decimal number with the file's own mark. */
  number(row: Row, at: number): number | undefined {
    const text = this.text(row, at);
    if (text === undefined) return undefined;
    const [, whole, mark] = /^([+-]?\d{1,9})(?:([.,])\d{1,9})?$/.exec(text) ?? [];
    if (whole === undefined) {
      this.report('E707', row, at, `${inTicks(text)} is no number`, 'write digits with at most one decimal mark, and no unit');
      return undefined;
    }
    if (mark === ',' && this.table.separator === ',') {
      this.report(
        'E707',
        row,
        at,
        `a decimal comma in ${inTicks(text)}`,
        'with commas between cells the decimal mark is a point',
      );
      return undefined;
    }
    if (mark === '.' || mark === ',') {
      this.mark ??= mark;
      if (mark !== this.mark) {
        const help = `use one decimal mark; the first one in this file is \`${this.mark}\``;
        this.report('E707', row, at, `another decimal mark in ${inTicks(text)}`, help);
        return undefined;
      }
    }
    return Number(text.replace(',', '.'));
  }
}

function readTimes(cells: Cells, rows: readonly Row[], heading: Heading & { kind: 'time' }, at: number): number[] {
  const { unit } = heading;
  if (unit !== undefined) return rows.flatMap((row) => inBase(cells.number(row, at), unit));
  const moments = rows.map((row) => readTime(cells, row, at));
  const [first] = moments.filter((each) => each !== undefined);
  for (const [index, row] of rows.entries()) {
    const way = moments[index]?.way;
    if (way !== undefined && way !== first?.way)
      cells.report(
        'E707',
        row,
        at,
        `${inTicks(row.cells[at] ?? '')} is not written like the first time`,
        'write all times one way',
      );
  }
  return moments.flatMap((each) => (each === undefined ? [] : [each.seconds]));
}

function readTime(cells: Cells, row: Row, at: number): Moment | undefined {
  const text = cells.text(row, at);
  if (text === undefined) return undefined;
  const moment = readMoment(text);
  if (moment !== undefined) return moment;
  if (/^[\d.,]+$/.test(text)) cells.report('E705', row, at, '`time` has no unit', 'write `time (s)` or `time (min)`');
  else cells.report('E707', row, at, `${inTicks(text)} is no time`, 'write `14:05:30` or `2026-03-02T14:05:30`');
  return undefined;
}

/** The readings of a channel in base units; outside of what any machine reaches a reading is taken for damaged. */
function readNumbers(cells: Cells, rows: readonly Row[], heading: Exclude<Heading, { kind: 'time' }>, at: number): number[] {
  const [least, most, bounds] =
    heading.kind === 'temperature'
      ? [-50, 300, 'between -50 °C and 300 °C']
      : heading.against === 'vacuum'
        ? [0, 1000, 'between 0 and 1000 kPa absolute']
        : [-110, 1000, 'between -110 and 1000 kPa gauge'];
  return rows.flatMap((row) => {
    const [value] = inBase(cells.number(row, at), heading.unit);
    if (value === undefined) return [];
    if (value < least || value > most)
      cells.report('E710', row, at, `${inTicks(row.cells[at] ?? '')} cannot be`, `a ${heading.kind} in a record is ${bounds}`);
    return [value];
  });
}

function inBase(value: number | undefined, unit: string): [] | [number] {
  return value === undefined ? [] : [inBaseUnit({ value, unit })];
}

function inOrder(problems: readonly RecordProblem[]): RecordProblem[] {
  return [...problems].sort((a, b) => a.line - b.line || a.column - b.column);
}
