import type { Duty, Machine, Rulebook, Task } from '../../link/rulebook.js';
import { formatInterval, type Interval } from '../../measure/interval.js';
import { inBaseUnit } from '../../measure/quantity.js';
import { groupBy } from '../text/group-by.js';
import { type Markdown, refer } from '../text/markdown.js';
import { said } from '../text/markdown-safe.js';
import { capitalize, joinList } from '../text/say-list.js';
import type { Bibliography } from './cite.js';
import { labelOf } from './label-of.js';
import { modelPrograms } from './model-choice.js';
import { modelTask } from './model-task.js';

const day = 86_400;

/** The turns by time, each with the longest interval that belongs to it in seconds, with the slack of the calendar, and its plain interval. */
const turnsByTime = [
  { heading: 'Each day of use', atMost: day, usual: 'every day of use' },
  { heading: 'Each week', atMost: 7 * day, usual: 'every week' },
  { heading: 'Each month', atMost: 31 * day, usual: 'every month' },
  { heading: 'Each quarter', atMost: 92 * day, usual: 'every 3 months' },
  { heading: 'Twice a year', atMost: 184 * day, usual: 'every 6 months' },
  { heading: 'Each year', atMost: 366 * day, usual: 'every year' },
  { heading: 'Less often', atMost: Number.POSITIVE_INFINITY, usual: '' },
];

const eachCycle = 'Each cycle';
const byCount = 'By cycles run';
const byEvent = 'When something happens';
const turnsInOrder = [eachCycle, ...turnsByTime.map(({ heading }) => heading), byCount, byEvent];

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
    turns: turnsInOrder.flatMap((heading) => {
      const lines = byTurn.get(heading);
      return lines === undefined ? [] : [{ heading, lines: linesOf(rulebook, lines) }];
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

function turnOf({ every }: Duty): string {
  if (every === undefined) return byEvent;
  if (every.cycles?.value === 1) return eachCycle;
  if (every.time === undefined) return byCount;
  const seconds = inBaseUnit(every.time);
  return turnsByTime.find(({ atMost }) => seconds <= atMost)?.heading ?? byCount;
}

/** One line a task and interval, naming the machines it falls on. */
function linesOf(rulebook: Rulebook, held: readonly { duty: Duty; task: Task }[]) {
  const byTask = groupBy(held, ({ duty }) => JSON.stringify([duty.task, sayInterval(duty.every)]));
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
                names.map((name) => said(name, 'clinic')),
                'and',
              ),
        often: sayTurn(first.duty, first.task),
        who: labelOf(rulebook, first.task.role),
      },
    ];
  });
}

/** The interval, where it is not plainly that of its turn. */
function sayTurn({ every, maker }: Duty, task: Task): Markdown | null {
  const plain = every === undefined || every.cycles?.value === 1 || turnsByTime.some(({ usual }) => usual === sayInterval(every));
  if (plain && maker === undefined) return null;
  return said(`${sayInterval(every)}${maker === undefined ? '' : ' (maker)'}`, task.id);
}

function sayInterval(every: Interval | undefined): string {
  return every === undefined ? '' : formatInterval(every);
}
