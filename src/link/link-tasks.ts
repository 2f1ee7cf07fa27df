import { formatInterval, isAtLeastAsOften } from '../measure/interval.js';
import type { Place } from '../read/finding.js';
import { compileCondition, type Vocabulary } from './compile-condition.js';
import { deviationOf } from './link-limits.js';
import { isFirst } from './link-vocabulary.js';
import { cite, eachOf, expectKnown, expectTerm, type Linking, report } from './linking.js';
import { readInterval } from './read-values.js';
import { requireStrict } from './require-strict.js';
import type { Change, Task } from './rulebook.js';

/** The tasks of all layers with the interval that regions and the clinic gave them. */
export function linkTasks(linking: Linking, vocabulary: Vocabulary, changes: Change[]): Map<string, Task> {
  const tasks = new Map<string, Task>();
  const placed = new Map<string, Place>();
  for (const { layer, document } of eachOf(linking, 'tasks'))
    for (const [id, raw] of Object.entries(document.data.tasks)) {
      const at = (...more: (string | number)[]) => document.at(['tasks', id, ...more]);
      if (!isFirst(linking, placed, 'task', id, document.atKey(['tasks', id]))) continue;
      if (raw.every === undefined && raw.on === undefined)
        report(
          linking,
          'E203',
          document.atKey(['tasks', id]),
          `task \`${id}\` says neither \`every\` nor \`on\``,
          'say how often at the latest, or on which events',
        );
      expectTerm(linking, raw.role, 'role', at('role'));
      raw.wear?.forEach((item, index) => expectTerm(linking, item, 'ppe', at('wear', index)));
      if (raw.machine !== undefined) expectTerm(linking, raw.machine, 'machine-kind', at('machine'));
      const onlyWhen =
        raw['only-when'] && compileCondition(linking, vocabulary, raw['only-when'], document, ['tasks', id, 'only-when']);
      const every = raw.every === undefined ? undefined : readInterval(linking, raw.every, at('every'));
      const source = cite(linking, raw.source, at('source'));
      tasks.set(id, {
        id,
        title: raw.title,
        ...(raw.machine !== undefined && { machine: raw.machine }),
        ...(onlyWhen !== undefined && { onlyWhen }),
        ...(every !== undefined && { every }),
        on: raw.on ?? [],
        ...(raw.when !== undefined && { when: raw.when }),
        role: raw.role,
        wear: raw.wear ?? [],
        steps: raw.steps,
        pass: raw.pass,
        ...(raw['if-not'] !== undefined && { ifNot: raw['if-not'] }),
        ...(raw.record !== undefined && { record: raw.record }),
        ...(raw.caution !== undefined && { caution: raw.caution }),
        source,
        layer: layer.id,
        chain: every === undefined ? [] : [{ layer: layer.id, value: formatInterval(every), every, source, place: at('every') }],
        place: document.atKey(['tasks', id]),
      });
    }
  changeIntervals(linking, tasks, changes);
  return tasks;
}

function changeIntervals(linking: Linking, tasks: Map<string, Task>, changes: Change[]): void {
  for (const { layer, document } of eachOf(linking, 'overrides'))
    document.data.changes.forEach((change, index) => {
      if (change.change !== 'interval') return;
      const at = (key: string) => document.at(['changes', index, key]);
      if (!expectKnown(linking, 'E306', 'task', change.task, tasks.keys(), at('task'))) return;
      const task = tasks.get(change.task);
      const every = readInterval(linking, change.every, at('every'));
      const source = cite(linking, change.source, at('source'));
      if (task === undefined || every === undefined) return;
      const before = task.every;
      const was = before === undefined ? 'only after events' : formatInterval(before);
      const accepted = requireStrict(linking, layer, {
        looser: task.every !== undefined && !isAtLeastAsOften(every, task.every),
        what: `\`${task.id}\` from ${was} to ${formatInterval(every)}`,
        because: 'more often is stricter',
        deviation: change.deviation,
        sources: [task.source, source],
        place: at('every'),
        document,
        path: ['changes', index],
      });
      if (!accepted) return;
      const words = { layer: layer.id, because: change.because, place: at('every'), ...deviationOf(change) };
      task.chain.push({ ...words, value: formatInterval(every), every, source });
      task.every = every;
      task.source = source;
      changes.push({
        ...words,
        kind: 'interval',
        about: task.id,
        change: `${was} becomes ${formatInterval(every)}`,
        interval: { ...(before !== undefined && { was: before }), becomes: every },
        source,
      });
    });
}
