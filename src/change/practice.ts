import { isDeepStrictEqual } from 'node:util';
import type { Impact } from '../analyse/impact.js';
import { factsOf } from '../decide/facts-of.js';
import type { Condition, Duty, Point, Procedure, Rulebook, Task } from '../link/rulebook.js';
import type { Interval } from '../measure/interval.js';
import type { Quantity } from '../measure/quantity.js';

/** One thing that is done, measured or decided in another way, and the roles whose work it touches. */
export type PracticeChange = { roles: string[] } & (
  | { about: 'limit'; id: string; label: string; before?: Quantity; after?: Quantity }
  | { about: 'task'; id: string; title: string; what: 'new' | 'gone' | 'words' | 'other role' }
  | { about: 'procedure'; id: string; title: string; what: 'new' | 'gone' }
  /** Steps by their numbers in the new procedure; those gone by their number in the old one. */
  | { about: 'steps'; id: string; title: string; added: number[]; changed: number[]; gone: number[] }
  | { about: 'policy'; id: string; title: string; what: 'new' | 'gone' }
  /** Points by their numbers, as steps are. */
  | { about: 'points'; id: string; title: string; added: number[]; changed: number[]; gone: number[] }
  | { about: 'answers'; id: string; title: string; what: 'changed' | 'new' | 'gone' }
  | { about: 'machine'; id: string; name: string; what: 'new' | 'gone' | 'programs' | 'sheet' }
);

/** A duty of a machine, or of the clinic, that comes at another time from now on. */
export interface ScheduleChange {
  task: string;
  title: string;
  /** Name of the machine; absent where the task is the clinic's. */
  machine?: string;
  /** Whether there is such a duty before and after; `every` is absent where it only follows events. */
  before?: { every?: Interval };
  after?: { every?: Interval };
}

/** What changes in practice from one rulebook to another, in the order of the work. */
export function practiceChanges(before: Rulebook, after: Rulebook, impact: Impact): PracticeChange[] {
  return [
    ...changedMachines(before, after),
    ...changedAnswers(before, after, impact),
    ...changedLimits(before, after),
    ...changedProcedures(before, after),
    ...changedPolicies(before, after),
    ...changedTasks(before, after),
  ];
}

/** Where the roles of a thing are not stated, the infection control lead reads it. */
const someone = ['infection-lead'];

function changedLimits(before: Rulebook, after: Rulebook): PracticeChange[] {
  return unionOf(before.limits, after.limits).flatMap((id): PracticeChange[] => {
    const [was, is] = [before.limits.get(id), after.limits.get(id)];
    if (isDeepStrictEqual(was?.value, is?.value)) return [];
    const roles = [...new Set([...rolesOfLimit(before, id), ...rolesOfLimit(after, id)])];
    return [
      {
        about: 'limit',
        id,
        label: is?.label ?? was?.label ?? id,
        ...(was && { before: was.value }),
        ...(is && { after: is.value }),
        roles: roles.length > 0 ? roles : someone,
      },
    ];
  });
}

function rolesOfLimit(rulebook: Rulebook, limit: string): string[] {
  const names = (texts: readonly (string | undefined)[]) => texts.some((text) => text?.includes(`](limit:${limit})`));
  const procedures = [...rulebook.procedures.values()].filter((each) => names(textsOfProcedure(each)));
  const policies = [...rulebook.policies.values()].filter(({ points }) =>
    points.some(({ say, why, caution, ifNot }) => names([say, why, caution, ifNot])),
  );
  const tasks = [...rulebook.tasks.values()].filter((each) => names(textsOfTask(each)));
  const decisions = [...rulebook.decisions.values()].filter(({ rules }) =>
    rules.some(({ when, needs }) => [when, needs].some((each) => each !== undefined && comparesWith(each, limit))),
  );
  return [
    ...procedures.flatMap(({ who }) => who),
    ...policies.flatMap(({ who }) => who),
    ...tasks.map(({ role }) => role),
    ...decisions.flatMap(({ id }) => rolesOfDecision(rulebook, id)),
  ];
}

function comparesWith(condition: Condition, limit: string): boolean {
  if (condition.kind === 'test') return condition.test.kind === 'compare' && condition.test.limit === limit;
  return condition.kind === 'not' ? comparesWith(condition.of, limit) : condition.of.some((each) => comparesWith(each, limit));
}

/** Who works by a decision: the roles of the procedures and policies that name it, also through decisions that look at its answer. */
function rolesOfDecision(rulebook: Rulebook, id: string, seen: ReadonlySet<string> = new Set()): string[] {
  const naming = [...rulebook.procedures.values(), ...rulebook.policies.values()];
  const own = naming.filter(({ decisions }) => decisions.includes(id)).flatMap(({ who }) => who);
  if (own.length > 0) return own;
  const looking = [...rulebook.decisions.values()].filter(
    (each) =>
      !seen.has(each.id) &&
      each.id !== id &&
      each.rules.some(({ when }) => factsOf(when, rulebook.facts).some((fact) => rulebook.facts.get(fact)?.decision === id)),
  );
  return looking.flatMap((each) => rolesOfDecision(rulebook, each.id, new Set([...seen, id])));
}

function changedAnswers(before: Rulebook, after: Rulebook, { decisions }: Impact): PracticeChange[] {
  return decisions.flatMap(({ decision: id, title, verdict }): PracticeChange[] => {
    if (verdict === 'same') return [];
    const [was, is] = [isPrinted(before, id), isPrinted(after, id)];
    if (!was && !is) return [];
    const roles = [...new Set([...rolesOfDecision(before, id), ...rolesOfDecision(after, id)])];
    const what = verdict === 'new' || !was ? 'new' : verdict === 'gone' || !is ? 'gone' : 'changed';
    return [{ about: 'answers', id, title, what, roles: roles.length > 0 ? roles : someone }];
  });
}

function isPrinted({ decisions, notHere }: Rulebook, id: string): boolean {
  return decisions.has(id) && !notHere.has(id);
}

function changedProcedures(before: Rulebook, after: Rulebook): PracticeChange[] {
  return unionOf(before.procedures, after.procedures).flatMap((id): PracticeChange[] => {
    const [was, is] = [before.procedures.get(id), after.procedures.get(id)];
    if (was === undefined) return is ? [{ about: 'procedure', id, title: is.title, what: 'new', roles: is.who }] : [];
    if (is === undefined) return [{ about: 'procedure', id, title: was.title, what: 'gone', roles: was.who }];
    const roles = [...new Set([...was.who, ...is.who])];
    const parts = changedParts(was.steps, is.steps, wordsOfStep);
    return parts === undefined ? [] : [{ about: 'steps', id, title: is.title, ...parts, roles }];
  });
}

function changedPolicies(before: Rulebook, after: Rulebook): PracticeChange[] {
  return unionOf(before.policies, after.policies).flatMap((id): PracticeChange[] => {
    const [was, is] = [before.policies.get(id), after.policies.get(id)];
    if (was === undefined) return is ? [{ about: 'policy', id, title: is.title, what: 'new', roles: is.who }] : [];
    if (is === undefined) return [{ about: 'policy', id, title: was.title, what: 'gone', roles: was.who }];
    const roles = [...new Set([...was.who, ...is.who])];
    const parts = changedParts(was.points, is.points, wordsOfPoint);
    return parts === undefined ? [] : [{ about: 'points', id, title: is.title, ...parts, roles }];
  });
}

/** What was added, changed or taken out of a numbered list, by number; nothing where it is as it was. */
function changedParts<Part extends { id: string }>(
  was: readonly Part[],
  is: readonly Part[],
  wordsOf: (part: Part) => unknown,
): { added: number[]; changed: number[]; gone: number[] } | undefined {
  const numbered = (parts: readonly Part[]) => new Map(parts.map((part, index) => [part.id, { part, number: index + 1 }]));
  const [old, next] = [numbered(was), numbered(is)];
  const [added, changed, gone]: [number[], number[], number[]] = [[], [], []];
  for (const [id, { part: now, number }] of next) {
    const then = old.get(id)?.part;
    if (then === undefined) added.push(number);
    else if (!isDeepStrictEqual(wordsOf(then), wordsOf(now))) changed.push(number);
  }
  for (const [id, { number }] of old) if (!next.has(id)) gone.push(number);
  return added.length + changed.length + gone.length === 0 ? undefined : { added, changed, gone };
}

function wordsOfStep(step: Procedure['steps'][number]): unknown {
  return [step.do, step.why, step.caution, step.ifNot];
}

function wordsOfPoint({ say, why, caution, ifNot }: Point): unknown {
  return [say, why, caution, ifNot];
}

function changedTasks(before: Rulebook, after: Rulebook): PracticeChange[] {
  return unionOf(before.tasks, after.tasks).flatMap((id): PracticeChange[] => {
    const [was, is] = [before.tasks.get(id), after.tasks.get(id)];
    if (was === undefined) return is ? [{ about: 'task', id, title: is.title, what: 'new', roles: [is.role] }] : [];
    if (is === undefined) return [{ about: 'task', id, title: was.title, what: 'gone', roles: [was.role] }];
    const roles = [...new Set([was.role, is.role])];
    if (was.role !== is.role) return [{ about: 'task', id, title: is.title, what: 'other role', roles }];
    return isDeepStrictEqual(textsOfTask(was), textsOfTask(is))
      ? []
      : [{ about: 'task', id, title: is.title, what: 'words', roles }];
  });
}

function textsOfTask({ steps, pass, ifNot, when, caution, wear, on, record }: Task): (string | undefined)[] {
  return [...steps, pass, ifNot, when, caution, record, ...wear, ...on];
}

function textsOfProcedure({ steps, purpose, ready, cautions, done }: Procedure): (string | undefined)[] {
  return [purpose, done, ...ready, ...cautions, ...steps.flatMap((step) => [step.do, step.why, step.caution, step.ifNot])];
}

function changedMachines(before: Rulebook, after: Rulebook): PracticeChange[] {
  return unionOf(before.machines, after.machines).flatMap((id): PracticeChange[] => {
    const [was, is] = [before.machines.get(id), after.machines.get(id)];
    const roles = ['reprocessing'];
    if (was === undefined || (!was.inService && is?.inService))
      return is ? [{ about: 'machine', id, name: is.name, what: 'new', roles }] : [];
    if (is === undefined || (was.inService && !is.inService))
      return [{ about: 'machine', id, name: was.name, what: 'gone', roles }];
    const programs = ({ programs: all }: typeof was) => all.map(({ place: _, ...program }) => program);
    if (!isDeepStrictEqual(programs(was), programs(is)))
      return [{ about: 'machine', id, name: is.name, what: 'programs', roles }];
    const sheet = ({ place: _, programs: __, intervals: ___, ...rest }: typeof was) => rest;
    return isDeepStrictEqual(sheet(was), sheet(is)) ? [] : [{ about: 'machine', id, name: is.name, what: 'sheet', roles }];
  });
}

/** Whose schedules move: every duty that is new, gone, or comes at another interval. */
export function scheduleChanges(before: Rulebook, after: Rulebook): ScheduleChange[] {
  const key = ({ task, machine }: Duty) => JSON.stringify([machine ?? '', task]);
  const [old, next] = [before, after].map(({ duties }) => new Map(duties.map((duty) => [key(duty), duty])));
  return unionOf(old ?? new Map(), next ?? new Map()).flatMap((id): ScheduleChange[] => {
    const [was, is] = [old?.get(id), next?.get(id)];
    if (was !== undefined && is !== undefined && isDeepStrictEqual(was.every, is.every)) return [];
    const { task, machine } = is ?? was ?? { task: '', machine: undefined };
    const name = machine && (after.machines.get(machine) ?? before.machines.get(machine))?.name;
    return [
      {
        task,
        title: (after.tasks.get(task) ?? before.tasks.get(task))?.title ?? task,
        ...(name !== undefined && { machine: name }),
        ...(was && { before: was.every === undefined ? {} : { every: was.every } }),
        ...(is && { after: is.every === undefined ? {} : { every: is.every } }),
      },
    ];
  });
}

function unionOf(before: ReadonlyMap<string, unknown>, after: ReadonlyMap<string, unknown>): string[] {
  return [...new Set([...after.keys(), ...before.keys()])];
}
