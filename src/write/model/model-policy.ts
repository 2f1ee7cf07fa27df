import type { Point, Policy, Rulebook } from '../../link/rulebook.js';
import { type Markdown, refer } from '../text/markdown.js';
import { textOfLayer } from '../text/markdown-safe.js';
import { sayList } from '../text/say-list.js';
import { type Bibliography, citeInText } from './cite.js';
import { labelOf } from './label-of.js';

/** A policy as its page shows it: its points, and the procedures, tasks, questions and forms that go with it. */
export function modelPolicy(rulebook: Rulebook, bibliography: Bibliography, policy: Policy) {
  const { id, title, layer } = policy;
  const tasks = modelTasks(rulebook, policy);
  return {
    id,
    title,
    purpose: textOfLayer(policy.purpose, layer),
    who: sayList(
      rulebook,
      policy.who.map((role) => labelOf(rulebook, role)),
      'and',
    ),
    points: policy.points.map((point) => modelPoint(rulebook, bibliography, point)),
    schedule: tasks.length >= rowsOfSchedule ? tasks : [],
    tasks: tasks.length < rowsOfSchedule ? tasks : [],
    also: [
      ...policy.procedures.filter((each) => rulebook.procedures.has(each)).map((each) => refer('procedure', each)),
      ...policy.decisions
        .filter((each) => rulebook.decisions.has(each) && !rulebook.notHere.has(each))
        .map((each) => refer('decision', each)),
    ],
    forms: policy.forms.filter((each) => rulebook.forms.has(each)).map((each) => refer('form', each)),
  };
}

/** From so many tasks on they are set as a table. */
const rowsOfSchedule = 5;

function modelTasks(rulebook: Rulebook, { tasks }: Policy) {
  return tasks.flatMap((id) => {
    const task = rulebook.tasks.get(id);
    if (task === undefined) return [];
    const often = task.every === undefined ? null : refer('every', id);
    return [{ task: refer('task', id), often, who: labelOf(rulebook, task.role) }];
  });
}

function modelPoint(rulebook: Rulebook, bibliography: Bibliography, { id, say, why, caution, ifNot, source, layer }: Point) {
  const optional = (text: string | undefined): Markdown | null => (text === undefined ? null : textOfLayer(text, layer));
  return {
    id,
    say: textOfLayer(say, layer),
    why: optional(why),
    caution: optional(caution),
    ifNot: optional(ifNot),
    source: citeInText(rulebook, bibliography, source),
  };
}
