import type { Duty, Rulebook, Task } from '../../link/rulebook.js';
import { groupBy } from '../text/group-by.js';
import { type Markdown, refer } from '../text/markdown.js';
import { said, textOfLayer } from '../text/markdown-safe.js';
import { phraseMarkdown } from '../text/phrase.js';
import { sayInterval } from '../text/say-interval.js';
import { capitalize, joinList, joinWith, sayList, uncapitalize } from '../text/say-list.js';
import { type Bibliography, citeInText } from './cite.js';
import { labelOf } from './label-of.js';

/** A task in compact form: how often, who, the steps, when it is passed, and what if not. */
export function modelTask(rulebook: Rulebook, bibliography: Bibliography, task: Task) {
  const text = (words: string) => textOfLayer(words, task.layer);
  return {
    id: task.id,
    title: task.title,
    often: sayWhenDue(rulebook, task),
    when: task.when === undefined ? null : text(task.when),
    who: capitalize(labelOf(rulebook, task.role)),
    wear:
      task.wear.length === 0
        ? null
        : joinList(
            rulebook,
            task.wear.map((term) => refer('term', term)),
            'and',
          ),
    caution: task.caution === undefined ? null : text(task.caution),
    steps: task.steps.map(text),
    pass: text(task.pass),
    ifNot: task.ifNot === undefined ? null : text(task.ifNot),
    record: task.record === undefined ? null : refer('form', task.record),
    source: citeInText(rulebook, bibliography, task.source),
  };
}

/** `Every day of use; also after repair.` */
function sayWhenDue(rulebook: Rulebook, task: Task): Markdown {
  const [often, events] = [sayOften(rulebook, task), sayEvents(rulebook, task)];
  if (often === null) return phraseMarkdown(rulebook, 'task.on-events', { events: events ?? '' });
  if (events === null) return phraseMarkdown(rulebook, 'task.often', { often });
  return phraseMarkdown(rulebook, 'task.often-and-on-events', { often, events });
}

/** `Every day of use`, or for each machine where their makers differ; nothing where only events call for it. */
function sayOften(rulebook: Rulebook, task: Task): Markdown | null {
  const duties = rulebook.duties.filter((duty) => duty.task === task.id);
  const byInterval = groupBy(duties, ({ every }) => (every === undefined ? '' : sayInterval(rulebook, every)));
  const usual = task.every === undefined ? '' : sayInterval(rulebook, task.every);
  const intervals = byInterval.size === 0 ? new Map<string, Duty[]>([[usual, []]]) : byInterval;
  const times = [...intervals].flatMap(([words, held]) => {
    if (words === '') return [];
    const machines = sayList(
      rulebook,
      held.flatMap(({ machine }) => rulebook.machines.get(machine ?? '')?.name ?? []),
      'and',
    );
    return [intervals.size > 1 && machines !== '' ? `${words} (${machines})` : words];
  });
  if (times.length === 0) return null;
  return joinWith(
    rulebook,
    'list.semicolon',
    times.map((words, index) => said(index === 0 ? capitalize(words) : words, task.id)),
  );
}

/** The events that call for a task, as they stand inside a sentence. */
function sayEvents(rulebook: Rulebook, task: Task): Markdown | null {
  if (task.on.length === 0) return null;
  return joinWith(
    rulebook,
    'list.semicolon',
    task.on.map((event) => textOfLayer(uncapitalize(event.replace(/\.$/, '')), task.layer)),
  );
}
