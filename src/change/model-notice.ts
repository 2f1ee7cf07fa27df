import type { AnswerChange, ChangedRegion, DecisionImpact } from '../analyse/impact.js';
import type { Rulebook } from '../link/rulebook.js';
import { formatInterval, type Interval } from '../measure/interval.js';
import { formatQuantity } from '../measure/quantity.js';
import { labelOf } from '../write/model/label-of.js';
import { modelMeta } from '../write/model/model-title.js';
import { type Markdown, refer } from '../write/text/markdown.js';
import { said } from '../write/text/markdown-safe.js';
import { phrase, phraseMarkdown } from '../write/text/phrase.js';
import { plainText } from '../write/text/plain-text.js';
import { sayDate } from '../write/text/say-date.js';
import { capitalize } from '../write/text/say-list.js';
import type { SectionChange } from './compare-texts.js';
import type { Comparison } from './comparison.js';
import type { PracticeChange, ScheduleChange } from './practice.js';

/** All that the templates of a change notice print. */
export function modelNotice(comparison: Comparison, tool: string) {
  const { before, after, impact, practice, schedules, sections } = comparison;
  const { clinic, limits } = after;
  const changed = impact.decisions.filter(({ verdict, decision }) => verdict !== 'same' && isTold(comparison, decision));
  const within = limits.get('change.sign-within');
  return {
    title: {
      ...modelMeta(after, tool),
      before: before.clinic.document.version,
      effective: sayDate(clinic.document.effective, after.language),
      approver: clinic.people.find(({ id }) => id === clinic.document['approved-by'])?.name ?? clinic.document['approved-by'],
    },
    signWithin: within === undefined ? null : refer('limit', 'change.sign-within'),
    nothingInPractice: practice.length === 0 && schedules.length === 0,
    noAnswer: impact.decisions.every(({ verdict }) => verdict === 'same'),
    roles: byRole(comparison),
    decisions: changed.map((each) => modelDecision(each, comparison)),
    schedules: schedules.map((each) => modelSchedule(each, comparison)),
    wording: onlyWords(comparison),
    pages: modelPages(sections),
    people: clinic.people.map(({ name, job }) => ({ name, job })),
  };
}

/** A decision that neither version prints is not told. */
function isTold({ before, after }: Comparison, id: string): boolean {
  return [before, after].some(({ decisions, notHere }) => decisions.has(id) && !notHere.has(id));
}

function byRole(comparison: Comparison) {
  const { after, practice } = comparison;
  const roles = [...new Set(practice.flatMap((each) => each.roles))];
  const order = [...after.terms.keys()];
  return roles
    .sort((a, b) => order.indexOf(a) - order.indexOf(b))
    .map((role) => ({
      role: capitalize(labelOf(after, role)),
      people: after.clinic.people
        .filter(({ roles: held }) => role === 'everyone' || held.includes(role))
        .map(({ name }) => name)
        .join(', '),
      lines: practice.filter(({ roles: touched }) => touched.includes(role)).map((each) => sayPractice(each, comparison)),
    }));
}

function sayPractice(change: PracticeChange, { after }: Comparison): Markdown {
  const say = (id: string, values: Record<string, string | number | Markdown> = {}) =>
    phraseMarkdown(after, `notice.${id}`, values);
  switch (change.about) {
    case 'limit': {
      const { before: was, after: is, label } = change;
      const quantity = (each: typeof was) => (each === undefined ? '' : said(formatQuantity(each), change.id));
      if (was === undefined) return say('limit-new', { label, after: quantity(is) });
      if (is === undefined) return say('limit-gone', { label });
      return say('limit', { label, before: quantity(was), after: quantity(is) });
    }
    case 'answers':
      return say(`answers-${change.what}`, {
        decision: change.what === 'gone' ? change.title : refer('decision', change.id),
      });
    case 'procedure':
      return say(`procedure-${change.what}`, {
        procedure: change.what === 'gone' ? change.title : refer('procedure', change.id),
      });
    case 'steps': {
      const parts = (['added', 'changed', 'gone'] as const).flatMap((what) =>
        change[what].length === 0
          ? []
          : [phrase(after, `notice.steps-${what}`, { count: change[what].length, steps: change[what].join(', ') })],
      );
      return say('steps', { procedure: refer('procedure', change.id), steps: said(parts.join('; '), change.id) });
    }
    case 'task':
      return say(change.what === 'other role' ? 'task-role' : `task-${change.what}`, {
        task: change.what === 'gone' ? change.title : refer('task', change.id),
        role: labelOf(after, after.tasks.get(change.id)?.role ?? ''),
      });
    case 'machine':
      return say(`machine-${change.what}`, { machine: said(change.name, 'clinic') });
  }
}

/** Most regions of one change that a notice lists; the rest is counted. */
const mostRegions = 3;

function modelDecision(impact: DecisionImpact, comparison: Comparison) {
  const { after } = comparison;
  const { decision, title, verdict, changes, open } = impact;
  return {
    title,
    question: (after.decisions.get(decision) ?? comparison.before.decisions.get(decision))?.question ?? '',
    state:
      verdict === 'new' || verdict === 'gone' || verdict === 'not decided'
        ? phrase(after, `notice.decision-${verdict.replace(' ', '-')}`)
        : null,
    changes: changes.map((each) => modelChange(each, impact, comparison)),
    open: changes.length === 0 && open !== undefined ? open.regions.slice(0, 1).map((region) => sayWhere(region, decision)) : [],
  };
}

function modelChange({ before: was, after: is, regions }: AnswerChange, { decision }: DecisionImpact, comparison: Comparison) {
  const more = regions.length - mostRegions;
  return {
    before: said(sayAnswer(comparison.before, decision, was), decision),
    after: said(sayAnswer(comparison.after, decision, is), decision),
    regions: regions.slice(0, mostRegions).map((region) => sayWhere(region, decision)),
    more: more > 0 ? phrase(comparison.after, 'notice.more-situations', { count: more }) : null,
  };
}

function sayWhere({ where }: ChangedRegion, decision: string): { lines: Markdown } {
  return { lines: said(where.map(({ label, is }) => `${label}: ${is}`).join('; '), decision) };
}

function sayAnswer(rulebook: Rulebook, decision: string, answer: string): string {
  const found = rulebook.decisions.get(decision);
  if (found?.kind === 'verdict') return capitalize(plainText(rulebook, found.say[answer] ?? answer).replace(/\.$/, ''));
  if (answer === 'none') return phrase(rulebook, 'notice.no-program');
  const machine = rulebook.machines.get(answer.split('/')[0] ?? '');
  const program = machine?.programs.find(({ id }) => id === answer);
  return machine && program ? `${machine.name}, ${program.name}` : answer;
}

function modelSchedule({ title, task, machine, before, after: is }: ScheduleChange, { after }: Comparison) {
  const often = (duty: { every?: Interval } | undefined) =>
    duty === undefined
      ? phrase(after, 'notice.not-done')
      : duty.every === undefined
        ? phrase(after, 'notice.after-events')
        : formatInterval(duty.every);
  return {
    machine: machine === undefined ? phrase(after, 'notice.whole-clinic') : machine,
    task: after.tasks.has(task) ? refer('task', task) : title,
    before: said(often(before), task),
    after: said(often(is), task),
  };
}

/** What is written in another way and means the same, as was proved: rules and limits by their decisions. */
function onlyWords({ impact, before, after }: Comparison): Markdown[] {
  return impact.decisions
    .filter(
      ({ verdict, rules, decision }) =>
        verdict === 'same' && rules.length > 0 && isTold({ before, after } as Comparison, decision),
    )
    .map(({ decision, rules }) =>
      phraseMarkdown(after, 'notice.rules-reworded', { count: rules.length, decision: refer('decision', decision) }),
    );
}

function modelPages(sections: readonly SectionChange[]) {
  const named = (fates: readonly SectionChange['fate'][]) =>
    sections
      .filter(({ fate }) => fates.includes(fate))
      .map(({ before, after }) => {
        const { number = '', title = '' } = after ?? before ?? {};
        return `${number} ${title}`;
      });
  return {
    changed: named(['changed', 'new']),
    gone: named(['gone']),
    moved: named(['moved']),
    renumbered: named(['renumbered']),
    same: sections.filter(({ fate }) => fate === 'same').length,
  };
}
