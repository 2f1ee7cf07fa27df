import type { Duty, Rulebook, Task } from '../../../link/rulebook.js';
import type { Interval } from '../../../measure/interval.js';
import { inBaseUnit } from '../../../measure/quantity.js';
import { groupBy } from '../../text/group-by.js';
import { phrase } from '../../text/phrase.js';
import { sayInterval } from '../../text/say-interval.js';
import { capitalize, sayList } from '../../text/say-list.js';
import { sayPlainQuantity } from '../../text/say-quantity.js';
import type { Figure } from '../figure.js';
import { sayRow } from '../say-row.js';

/** A year of tasks, to be ticked off. */
export interface YearDrawing {
  kind: 'year';
  /** Short names of the twelve months. */
  months: string[];
  groups: YearGroup[];
}

/** The tasks on the machines of one kind, or those of the clinic. */
export interface YearGroup {
  title: string;
  /** What comes round too often to be drawn; empty where nothing does. */
  often: string;
  rows: YearRow[];
}

export interface YearRow {
  title: string;
  /** Months in which it falls due once: 1, 2, 3, 4, 6 or 12. */
  span: number;
  /** The interval, where it is longer than a year. */
  rare?: string;
}

const month = 2_629_800;
/** Parts of a year in months, and how much shorter than its name an interval may be: a month has 28 days at least. */
const spans = [12, 6, 4, 3, 2, 1];
const slack = 0.09;

/** More rows than this do not fit on a page: then the most frequent tasks are only counted. */
const mostRows = 44;

/** The clinic's tasks of a year by machine; nothing where no task comes round by the calendar. */
export function modelYear(rulebook: Rulebook): Figure | undefined {
  const held = rulebook.duties.flatMap(({ task: id, every, ...duty }) => {
    const task = rulebook.tasks.get(id);
    return task === undefined || every === undefined ? [] : [{ ...duty, task, every }];
  });
  const byKind = groupBy(held, ({ task }) => task.machine);
  const kinds = [...new Set([...rulebook.machines.values()].map(({ kind }) => kind)), undefined];
  const groupsFrom = (shortest: number) =>
    kinds.flatMap((kind) => {
      const own = byKind.get(kind) ?? [];
      return own.length === 0 ? [] : [groupOf(rulebook, kind, own, shortest)];
    });
  const groups = [...spans]
    .reverse()
    .map(groupsFrom)
    .find((each) => each.reduce((sum, { rows }) => sum + rows.length, 0) <= mostRows);
  if (groups === undefined || groups.every(({ rows }) => rows.length === 0)) return undefined;
  const drawing: YearDrawing = { kind: 'year', months: monthsIn(rulebook.language), groups };
  return { id: 'year', caption: phrase(rulebook, 'figure.year-caption'), alt: describeYear(rulebook, drawing), drawing };
}

type Held = Omit<Duty, 'task'> & { task: Task; every: Interval };

function groupOf(rulebook: Rulebook, kind: string | undefined, held: readonly Held[], shortest: number): YearGroup {
  const names = (machines: ReadonlySet<string | undefined>) =>
    sayList(
      rulebook,
      [...machines].flatMap((id) => rulebook.machines.get(id ?? '')?.name ?? []),
      'and',
    );
  const all = new Set(held.map(({ machine }) => machine));
  const lines = [...groupBy(held, ({ task, every }) => JSON.stringify([task.id, every])).values()].flatMap((same) => {
    const [first] = same;
    if (first === undefined) return [];
    const machines = new Set(same.map(({ machine }) => machine));
    const { task, every } = first;
    return [{ task, every, span: spanOf(every), machines: machines.size < all.size ? names(machines) : '' }];
  });
  const drawn = lines.filter(({ span }) => span >= shortest);
  const often = groupBy(
    lines.filter((line) => !drawn.includes(line)).sort((a, b) => monthsOf(a.every) - monthsOf(b.every)),
    ({ every }) => sayInterval(rulebook, every),
  );
  const counted = [...often].map(([interval, { length }]) => phrase(rulebook, 'figure.year-often', { number: length, interval }));
  return {
    title: kind === undefined ? phrase(rulebook, 'figure.year-clinic') : names(all),
    often: counted.join(', '),
    rows: drawn
      .sort((a, b) => monthsOf(a.every) - monthsOf(b.every))
      .map(({ task, every, span, machines }) => ({
        title: titleOf(rulebook, task, every, machines),
        span,
        ...(monthsOf(every) > 12.5 && { rare: sayInterval(rulebook, every) }),
      })),
  };
}

function titleOf(rulebook: Rulebook, { title }: Task, { cycles }: Interval, machines: string): string {
  const task = machines === '' ? title : phrase(rulebook, 'figure.year-on', { task: title, machines });
  return cycles === undefined
    ? task
    : phrase(rulebook, 'figure.year-or-cycles', { task, cycles: sayPlainQuantity(rulebook, cycles) });
}

/** An interval in months; none where it counts cycles only. */
function monthsOf({ time }: Interval): number {
  return time === undefined ? 0 : inBaseUnit(time) / month;
}

/** The longest part of a year that is no longer than an interval, in months; 0 where the interval is less than a month. */
function spanOf(every: Interval): number {
  return spans.find((span) => span <= monthsOf(every) + slack) ?? 0;
}

function monthsIn(language: string): string[] {
  const format = new Intl.DateTimeFormat(language, { month: 'short', timeZone: 'UTC' });
  return Array.from({ length: 12 }, (_, index) => capitalize(format.format(new Date(Date.UTC(2001, index, 15)))));
}

function describeYear(rulebook: Rulebook, { groups }: YearDrawing): string {
  const times = ({ span, rare }: YearRow) => rare ?? phrase(rulebook, 'figure.year-alt-times', { count: 12 / span });
  const said = groups
    .filter(({ rows }) => rows.length > 0)
    .map(({ title, rows }) => {
      const tasks = rows.map((row) => phrase(rulebook, 'figure.year-alt-task', { task: row.title, times: times(row) }));
      return phrase(rulebook, 'figure.year-alt-group', { group: title, tasks: sayRow(rulebook, tasks) });
    });
  return [phrase(rulebook, 'figure.year-alt'), ...said].join(' ');
}
