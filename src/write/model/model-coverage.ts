import { answersHere } from '../../check/check-requirements.js';
import type { AnswerReference, Requirement, Rulebook } from '../../link/rulebook.js';
import { groupBy } from '../text/group-by.js';
import { join, type Markdown, refer } from '../text/markdown.js';
import { said, saidText } from '../text/markdown-safe.js';
import type { Bibliography } from './cite.js';

/** What publications ask of the written program, by publication and by its headings, each item with where it is answered. */
export function modelCoverage(rulebook: Rulebook, bibliography: Bibliography) {
  const bySource = groupBy(rulebook.requirements.values(), ({ source }) => source.id);
  if (bySource.size === 0) return null;
  return [...bySource].map(([id, requirements]) => ({
    number: bibliography.get(id)?.number ?? 0,
    allRecalled: requirements.every(isRecalled),
    title: said(rulebook.sources.get(id)?.title ?? id, id),
    sections: [...groupBy(requirements, ({ section }) => section)].map(([section, items]) => ({
      section: said(section, id),
      items: items.map((item) => modelItem(rulebook, item, !requirements.every(isRecalled))),
    })),
  }));
}

function isRecalled({ source }: Requirement): boolean {
  return source.evidence === 'recalled';
}

function modelItem(rulebook: Rulebook, requirement: Requirement, marked: boolean) {
  const { id, item, text, clause, source } = requirement;
  const answers = answersHere(rulebook, requirement);
  return {
    id,
    item: said(item, source.id),
    clause: clause === undefined ? null : said(clause, source.id),
    asked: saidText(text, source.id),
    recalled: marked && isRecalled(requirement),
    answers:
      answers.length === 0
        ? null
        : join(
            answers.map((answer) => sayWhere(rulebook, answer)),
            '; ',
          ),
  };
}

/** `12.3`, or `12.3 (4)` for the fourth point of a policy; a limit by its value, and a task by its name. */
function sayWhere({ policies }: Rulebook, { scheme, id }: AnswerReference): Markdown {
  if (scheme === 'limit' || scheme === 'task') return refer(scheme, id);
  if (scheme !== 'policy' || !id.includes('/')) return { markdown: `[](at:${scheme}:${id})` };
  const point = policies.get(id.split('/')[0] ?? '')?.points.findIndex((each) => each.id === id) ?? -1;
  return join([{ markdown: `[](at:point:${id})` }, ` (${point + 1})`]);
}
