import type { Duty, Machine, Rulebook, Task } from '../../link/rulebook.js';
import type { Interval } from '../../measure/interval.js';
import { inBaseUnit } from '../../measure/quantity.js';
import { groupBy } from '../text/group-by.js';
import { type Markdown, refer } from '../text/markdown.js';
import { said } from '../text/markdown-safe.js';
import { phrase } from '../text/phrase.js';
import { sayInterval } from '../text/say-interval.js';
import { capitalize, joinList } from '../text/say-list.js';
import type { Bibliography } from './cite.js';
import { labelOf } from './label-of.js';
import { modelPrograms } from './model-choice.js';
import { modelTask } from './model-task.js';

const day = 86_400;

/** The turns by time, each with the longest interval that belongs to it in seconds, with the slack of the calendar, and its plain interval. */
const turnsByTime = [
  { turn: 'day', atMost: day, usual: { value: 1, unit: 'd' } },
  { turn: 'week', atMost: 7 * day, usual: { value: 1, unit: 'wk' } },
  { turn: 'month', atMost: 31 * day, usual: { value: 1, unit: 'mo' } },
  { turn: 'quarter', atMost: 92 * day, usual: { value: 3, unit: 'mo' } },
  { turn: 'half-year', atMost: 184 * day, usual: { value: 6, unit: 'mo' } },
  { turn: 'year', atMost: 366 * day, usual: { value: 1, unit: 'a' } },
  { turn: 'longer', atMost: Number.POSITIVE_INFINITY, usual: undefined },
] as const;

type Turn = 'cycle' | (typeof turnsByTime)[number]['turn'] | 'count' | 'event';

const turnsInOrder: readonly Turn[] = ['cycle', ...turnsByTime.map(({ turn }) => turn), 'count', 'event'];

/** What comes round when, by turn; then how each task is done, by kind of machine. */
export function modelSchedule(rulebook: Rulebook, bibliography: Bibliography, withoutPrograms: readonly Machine[]) {
  const held = rulebook.duties
    .flatMap((duty) => {
      const task = rulebook.tasks.get(duty.task);
      return task === undefined ? [] : [{ duty, task }];
    })
    .sort((a, b) => turnsInOrder.indexOf(turnOf(a.duty)) - turnsInOrder.indexOf(turnOf(b.duty)));
  const byTurn = groupBy(held, ({ duty }) => turnOf(duty));
  const tasks = [...new Set(held.map(({ task }) => task))];
  const kinds = [...new Set([...rulebook.machines.values()].map(({ kind }) => kind)), undefined];
  return {
    turns: turnsInOrder.flatMap((turn) => {
      const lines = byTurn.get(turn);
      return lines === undefined
        ? []
        : [{ heading: said(phrase(rulebook, `turn.${turn}`), 'schedule'), lines: linesOf(rulebook, lines) }];
    }),
    programs: withoutPrograms.map((machine) => modelPrograms(rulebook, machine)),
    kinds: kinds.flatMap((kind) => {
      const own = tasks.filter(({ machine }) => machine === kind);
      const name = kind === undefined ? null : capitalize(labelOf(rulebook, kind));
      const shown = own.map((task) => modelTask(rulebook, bibliography, task));
      return shown.length === 0 ? [] : [{ id: kind ?? 'clinic', name, tasks: shown }];
    }),
  };
}

function turnOf({ every }: Duty): Turn {
  if (every === undefined) return 'event';
  if (every.cycles?.value === 1) return 'cycle';
  if (every.time === undefined) return 'count';
  const seconds = inBaseUnit(every.time);
  return turnsByTime.find(({ atMost }) => seconds <= atMost)?.turn ?? 'count';
}

/** One line a task and interval, naming the machines it falls on. */
function linesOf(rulebook: Rulebook, held: readonly { duty: Duty; task: Task }[]) {
  const byTask = groupBy(held, ({ duty }) =>
    JSON.stringify([duty.task, duty.every === undefined ? '' : sayInterval(rulebook, duty.every)]),
  );
  return [...byTask.values()].flatMap((same) => {
    const [first] = same;
    if (first === undefined) return [];
    const names = same.flatMap(({ duty }) => rulebook.machines.get(duty.machine ?? '')?.name ?? []);
    return [
      {
        task: refer('task', first.task.id),
        machines:
          names.length === 0
            ? null
            : joinList(
                rulebook,
                names.map((name) => said(name, 'clinic')),
                'and',
              ),
        often: sayTurn(rulebook, first.duty, first.task),
        who: labelOf(rulebook, first.task.role),
      },
    ];
  });
}

/** The interval, where it is not plainly that of its turn. */
function sayTurn(rulebook: Rulebook, { every, maker }: Duty, task: Task): Markdown | null {
  if (every === undefined || (maker === undefined && isUsual(every))) return null;
  const interval = sayInterval(rulebook, every);
  return said(maker === undefined ? interval : phrase(rulebook, 'turn.maker', { interval }), task.id);
}

function isUsual({ time, cycles }: Interval): boolean {
  if (cycles?.value === 1) return true;
  if (cycles !== undefined || time === undefined) return false;
  return turnsByTime.some(({ usual }) => usual?.unit === time.unit && usual.value === time.value);
}
