import type { AnswerChange, ChangedRegion, DecisionImpact } from '../analyse/impact.js';
import type { Rulebook } from '../link/rulebook.js';
import type { Interval } from '../measure/interval.js';
import { labelOf } from '../write/model/label-of.js';
import { modelMeta } from '../write/model/model-title.js';
import { sayFactValue } from '../write/model/say-fact-value.js';
import { groupBy } from '../write/text/group-by.js';
import { join, type Markdown, refer } from '../write/text/markdown.js';
import { said } from '../write/text/markdown-safe.js';
import { phrase, phraseMarkdown } from '../write/text/phrase.js';
import { plainText } from '../write/text/plain-text.js';
import { sayDate } from '../write/text/say-date.js';
import { sayInterval } from '../write/text/say-interval.js';
import { capitalize, sayList } from '../write/text/say-list.js';
import { sayPlainQuantity, sayQuantity } from '../write/text/say-quantity.js';
import type { SectionChange } from './compare-texts.js';
import type { Comparison } from './comparison.js';
import type { PracticeChange, ScheduleChange } from './practice.js';

/** All that the templates of a change notice print. */
export function modelNotice(comparison: Comparison, tool: string) {
  const { before, after, impact, practice, schedules, sections } = comparison;
  const { clinic, limits } = after;
  const changed = impact.decisions.filter(({ verdict, decision }) => verdict !== 'same' && isTold(comparison, decision));
  const decisions = changed.map((each) => modelDecision(each, comparison));
  const within = limits.get('change.sign-within');
  return {
    title: {
      ...modelMeta(after, tool),
      title: phrase(after, 'notice.title'),
      manual: clinic.document.title,
      before: before.clinic.document.version,
      effective: sayDate(clinic.document.effective, after.language),
      approver: clinic.people.find(({ id }) => id === clinic.document['approved-by'])?.name ?? clinic.document['approved-by'],
    },
    signWithin: within === undefined ? null : refer('limit', 'change.sign-within'),
    nothingInPractice: practice.length === 0 && schedules.length === 0,
    noAnswer: impact.decisions.every(({ verdict }) => verdict === 'same'),
    roles: byRole(comparison),
    decisions,
    examples: decisions.some(({ changes }) => changes.some(({ isExample }) => isExample)),
    schedules: modelSchedules(comparison),
    wording: onlyWords(comparison),
    pages: modelPages(sections),
    people: clinic.people.map(({ name, job }) => ({ name, job })),
  };
}

/** A decision that neither version prints is not told. */
function isTold({ before, after }: Comparison, id: string): boolean {
  return [before, after].some(({ decisions, notHere }) => decisions.has(id) && !notHere.has(id));
}

/** What changes for each role; roles for which the same changes stand together. */
function byRole(comparison: Comparison) {
  const { after, practice } = comparison;
  const order = [...after.terms.keys()];
  const roles = [...new Set(practice.flatMap((each) => each.roles))].sort((a, b) => order.indexOf(a) - order.indexOf(b));
  const touching = (role: string) => practice.filter((each) => each.roles.includes(role));
  return [
    ...groupBy(roles, (role) =>
      touching(role)
        .map((each) => practice.indexOf(each))
        .join(),
    ).values(),
  ].map((same) => ({
    role: capitalize(
      sayList(
        after,
        same.map((role) => labelOf(after, role)),
        'and',
      ),
    ),
    people: after.clinic.people
      .filter(({ roles: held }) => same.some((role) => role === 'everyone' || held.includes(role)))
      .map(({ name }) => name)
      .join(', '),
    lines: touching(same[0] ?? '').map((each) => sayPractice(each, comparison)),
  }));
}

function sayPractice(change: PracticeChange, { after }: Comparison): Markdown {
  const say = (id: string, values: Record<string, string | number | Markdown> = {}) =>
    phraseMarkdown(after, `notice.${id}`, values);
  switch (change.about) {
    case 'limit': {
      const { before: was, after: is, label } = change;
      const quantity = (each: typeof was) => (each === undefined ? '' : said(sayQuantity(after, each), change.id));
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
    case 'policy':
      return say(`policy-${change.what}`, {
        policy: change.what === 'gone' ? change.title : refer('policy', change.id),
      });
    case 'points': {
      const parts = (['added', 'changed', 'gone'] as const).flatMap((what) =>
        change[what].length === 0
          ? []
          : [phrase(after, `notice.points-${what}`, { count: change[what].length, points: change[what].join(', ') })],
      );
      return say('points', { policy: refer('policy', change.id), points: said(parts.join('; '), change.id) });
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

/** Most kinds of situation that a notice lists of one change; the rest is counted. */
const mostRegions = 2;
/** A kind of situation that takes more letters than this is shown by an example. */
const longestRegion = 220;

function modelDecision(impact: DecisionImpact, comparison: Comparison) {
  const { before, after } = comparison;
  const { decision, title, verdict, changes, open, rules, limits } = impact;
  const isEnd = verdict === 'new' || verdict === 'gone' || verdict === 'not decided';
  const because = (what: 'new' | 'retired') => rules.filter((each) => each.what === what).map(({ rule }) => rule);
  const sayRules = (from: Rulebook, ids: readonly string[]) =>
    ids.flatMap((id) => from.decisions.get(decision)?.rules.find((rule) => rule.id === id) ?? []).map((rule) => rule.because);
  return {
    title,
    question: (after.decisions.get(decision) ?? before.decisions.get(decision))?.question ?? '',
    state: isEnd ? phrase(after, `notice.decision-${verdict.replace(' ', '-')}`) : null,
    causes: [
      ...sayRules(before, because('retired')).map((words) =>
        phrase(after, 'notice.cause-retired', { rule: plainText(before, words) }),
      ),
      ...sayRules(after, because('new')).map((words) => phrase(after, 'notice.cause-new', { rule: plainText(after, words) })),
      ...limits.map((each) =>
        phrase(after, 'notice.cause-limit', {
          limit: after.limits.get(each.limit)?.label ?? before.limits.get(each.limit)?.label ?? each.limit,
          before: sayLimit(before, each.limit, comparison),
          after: sayLimit(after, each.limit, comparison),
        }),
      ),
    ].map((words) => said(words, decision)),
    changes: changes.map((each) => modelChange(each, impact, comparison)),
    open:
      changes.length === 0 && open !== undefined ? open.regions.slice(0, 1).map((region) => sayExample(region, comparison)) : [],
  };
}

function modelChange({ before: was, after: is, regions }: AnswerChange, { decision }: DecisionImpact, comparison: Comparison) {
  // Regions are said in English only: elsewhere an example stands for them.
  const short = comparison.after.language.startsWith('en')
    ? regions.map(sayRegion).filter((words) => words.length <= longestRegion)
    : [];
  const [example] = regions;
  const shown = short.slice(0, mostRegions);
  const more = regions.length - Math.max(1, shown.length);
  return {
    isExample: shown.length === 0,
    before: said(sayAnswer(comparison.before, decision, was), decision),
    after: said(sayAnswer(comparison.after, decision, is), decision),
    regions:
      shown.length > 0 || example === undefined
        ? shown.map((words) => ({ words: said(words, decision) }))
        : [{ words: sayExample(example, comparison) }],
    more: more > 0 ? phrase(comparison.after, 'notice.more-situations', { count: more }) : null,
  };
}

/** The value of a limit, in the words of the new manual. */
function sayLimit({ limits }: Rulebook, id: string, { after }: Comparison): string {
  const value = limits.get(id)?.value;
  return value === undefined ? phrase(after, 'notice.not-set') : sayPlainQuantity(after, value);
}

function sayRegion({ where }: ChangedRegion): string {
  return where.map(({ label, is }) => `${label}: ${is}`).join('; ');
}

/** One situation of a kind, with every fact that it states. */
function sayExample({ situation }: ChangedRegion, { after, before }: Comparison): Markdown {
  const facts = Object.entries(situation).flatMap(([id, value]) => {
    const fact = after.facts.get(id) ?? before.facts.get(id);
    return fact === undefined ? [] : [join([`${fact.label}: `, sayFactValue(after, fact, value)])];
  });
  return phraseMarkdown(after, 'notice.for-example', { situation: join(facts, '; ') });
}

function sayAnswer(rulebook: Rulebook, decision: string, answer: string): string {
  const found = rulebook.decisions.get(decision);
  if (found?.kind === 'verdict') return capitalize(plainText(rulebook, found.say[answer] ?? answer).replace(/\.$/, ''));
  if (answer === 'none') return phrase(rulebook, 'notice.no-program');
  const machine = rulebook.machines.get(answer.split('/')[0] ?? '');
  const program = machine?.programs.find(({ id }) => id === answer);
  return machine && program ? `${machine.name}, ${program.name}` : answer;
}

function modelSchedules({ schedules, before, after }: Comparison) {
  const often = (duty: { every?: Interval } | undefined) =>
    duty === undefined
      ? phrase(after, 'notice.not-done')
      : duty.every === undefined
        ? phrase(after, 'notice.after-events')
        : sayInterval(after, duty.every);
  const inService = ({ machines }: Rulebook) =>
    new Set([...machines.values()].filter((machine) => machine.inService).map(({ name }) => name));
  const [old, next] = [inService(before), inService(after)];
  const ended = (each: ScheduleChange) => each.machine !== undefined && old.has(each.machine) && !next.has(each.machine);
  const machineOf = ({ machine }: ScheduleChange) => machine ?? phrase(after, 'notice.whole-clinic');
  const moved = schedules
    .filter((each) => !ended(each))
    .map((each) => ({
      machine: machineOf(each),
      task: after.tasks.has(each.task) ? refer('task', each.task) : join([each.title]),
      before: said(often(each.before), each.task),
      after: said(often(each.after), each.task),
    }));
  // A machine that is gone takes its whole schedule with it.
  const gone = [...groupBy(schedules.filter(ended), machineOf)].map(([machine, tasks]) => ({
    machine,
    task: join([phrase(after, 'notice.all-tasks', { count: tasks.length })]),
    before: join(['']),
    after: join([phrase(after, 'notice.not-done')]),
  }));
  return [...moved, ...gone];
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
