import { dimensionOf } from '../quantity.js';
import { findUnit, units } from '../units.js';
import { inTicks, type RecordProblem, RecordRefused } from './cycle-record.js';
import type { Row } from './read-table.js';

/** What a column holds. */
export type Heading =
  /** `unit` is absent where cells are clock times or dates with times. */
  | { kind: 'time'; name: string; unit?: string }
  | { kind: 'temperature'; name: string; unit: string }
  | { kind: 'pressure'; name: string; unit: string; against: 'vacuum' | 'air' };

const mostColumns = 17;
const shape = 'write for example `time (s),temperature 1 (°C),temperature 2 (°C),pressure (kPa absolute)`';

/**
 * Reads the line of headings: `time` or `time (s)` once, `temperature …` with its unit at least once, `pressure …` with its
 * unit and `absolute` or `gauge` at most once. A column that is none of these is refused, so that none goes unseen.
 *
 * @throws RecordRefused E704 or E705.
 */
export function readHeadings(row: Row): Heading[] {
  const problems: RecordProblem[] = [];
  const report = (code: RecordProblem['code'], cell: number, message: string, help = shape) =>
    problems.push({ code, line: row.line, column: row.columnOf(cell), message, help });
  const headings = row.cells.map((cell, index) => {
    const heading = readHeading(cell);
    if ('code' in heading) report(heading.code, index, heading.message, heading.help);
    return heading;
  });
  const good = headings.filter((each): each is Heading => !('code' in each));
  for (const [index, heading] of headings.entries()) {
    if ('code' in heading) continue;
    const again = headings.findIndex((each) => !('code' in each) && each.name === heading.name) < index;
    const second = heading.kind !== 'temperature' && good.findIndex(({ kind }) => kind === heading.kind) < good.indexOf(heading);
    if (again || second) report('E704', index, `a second column ${inTicks(again ? heading.name : heading.kind)}`);
  }
  if (problems.length === 0) {
    for (const kind of ['time', 'temperature'] as const)
      if (!good.some((each) => each.kind === kind)) report('E704', 0, `there is no column \`${kind}\``);
    if (good.length > mostColumns) report('E704', mostColumns, `more than ${mostColumns} columns`);
  }
  if (problems.length > 0) throw new RecordRefused(problems);
  return good;
}

type Misread = Pick<RecordProblem, 'code' | 'message' | 'help'>;

function readHeading(cell: string): Heading | Misread {
  const [, kind, name = '', bracket] = /^((?:time|temperature|pressure)\b)([^()]*?)\s*(?:\(([^()]*)\))?$/i.exec(cell) ?? [];
  if (kind === undefined) return { code: 'E704', message: `unknown column ${inTicks(cell)}`, help: shape };
  const own = { name: `${kind.toLowerCase()}${name}`, cell };
  switch (kind.toLowerCase()) {
    case 'time':
      return readTimeHeading(own, bracket?.trim());
    case 'temperature':
      return readTemperatureHeading(own, bracket?.trim());
    default:
      return readPressureHeading(own, bracket?.trim());
  }
}

interface Own {
  name: string;
  cell: string;
}

function readTimeHeading({ name, cell }: Own, unit: string | undefined): Heading | Misread {
  if (name !== 'time') return { code: 'E704', message: `unknown column ${inTicks(cell)}`, help: shape };
  if (unit === undefined) return { kind: 'time', name };
  const code = codeOf(unit, 'time');
  if (code !== 's' && code !== 'min')
    return { code: 'E705', message: `${inTicks(unit)} is not \`s\` or \`min\``, help: 'clock times stand under `time` alone' };
  return { kind: 'time', name, unit: code };
}

function readTemperatureHeading({ name, cell }: Own, unit: string | undefined): Heading | Misread {
  const help = 'write `°C` or `°F` in brackets';
  if (unit === undefined || unit === '') return { code: 'E705', message: `${inTicks(cell)} has no unit`, help };
  const code = codeOf(unit, 'temperature');
  if (code === undefined) return { code: 'E705', message: `${inTicks(unit)} is no unit of temperature`, help };
  return { kind: 'temperature', name, unit: code };
}

function readPressureHeading({ name, cell }: Own, bracket: string | undefined): Heading | Misread {
  const known = units.filter(({ dimension }) => dimension === 'pressure').map(({ many }) => `\`${many}\``);
  const help = `write a unit, and \`absolute\` or \`gauge\`, in brackets; units are ${known.join(', ')}`;
  if (bracket === undefined || bracket === '') return { code: 'E705', message: `${inTicks(cell)} has no unit`, help };
  const [, unit = '', against] = /^(.*?)(?:\s+(absolute|gauge))?$/.exec(bracket) ?? [];
  const code = codeOf(unit, 'pressure');
  if (code === undefined) return { code: 'E705', message: `${inTicks(unit)} is no unit of pressure`, help };
  if (against === undefined)
    return {
      code: 'E705',
      message: `${inTicks(cell)} does not say \`absolute\` or \`gauge\``,
      help: 'a gauge reads 0 in open air',
    };
  return { kind: 'pressure', name, unit: code, against: against === 'gauge' ? 'air' : 'vacuum' };
}

function codeOf(name: string, dimension: 'time' | 'temperature' | 'pressure'): string | undefined {
  const unit = findUnit(name);
  return unit !== undefined && dimensionOf({ value: 0, unit: unit.ucum }) === dimension ? unit.ucum : undefined;
}
