import { createHash } from 'node:crypto';
import type { Condition, Duty, LinkedRules, Machine, Policy, Procedure, Rulebook, Situation, Task } from '../link/rulebook.js';
import { strictestInterval } from '../measure/interval.js';
import { canonicalJson } from './canonical-json.js';
import { factsOf } from './facts-of.js';
import { tailorCards } from './tailor-cards.js';
import { truthOf } from './truth.js';

/**
 * Keeps of the linked rules what holds for the clinic: its machines, and the facts it states about itself. Where a fact
 * is missing, the thing is kept. Works out each task's duties, with the stricter of the rules' and the maker's interval.
 */
export function tailorRules(rules: LinkedRules): Rulebook {
  const holds = (condition: Condition | undefined, facts: Situation = {}) =>
    condition === undefined || truth(rules, condition, facts) !== false;
  const duties = [...rules.tasks.values()].flatMap((task) => dutiesOf(task, rules, holds));
  const withDuty = new Set(duties.map(({ task }) => task));
  const machines = [...rules.machines.values()];
  const isHere = ({ machine, onlyWhen }: { machine?: string; onlyWhen?: Condition }) =>
    machine === undefined ? holds(onlyWhen) : machines.some(({ kind, facts }) => kind === machine && holds(onlyWhen, facts));
  /** Whether a step holds for one of the machines whose sheets state what it asks of a machine. */
  const holdsOnSome = (condition: Condition | undefined): boolean => {
    const asked = condition === undefined ? [] : factsOf(condition, rules.facts);
    const ofMachines = asked.filter((fact) => rules.facts.get(fact)?.statedBy === 'machine');
    const stating = machines.filter(({ inService, facts }) => inService && ofMachines.some((fact) => fact in facts));
    return stating.length === 0 ? holds(condition) : stating.some(({ facts }) => holds(condition, facts));
  };
  const stepsHere = (procedure: Procedure): Procedure => ({
    ...procedure,
    steps: procedure.steps.filter((step) => holdsOnSome(step.onlyWhen)),
  });
  const pointsHere = (policy: Policy): Policy => ({ ...policy, points: policy.points.filter(({ onlyWhen }) => holds(onlyWhen)) });
  const tasks = new Map([...rules.tasks].filter(([id]) => withDuty.has(id)));
  const procedures = new Map(
    [...rules.procedures]
      .filter(([, procedure]) => holds(procedure.onlyWhen))
      .map(([id, procedure]) => [id, stepsHere(procedure)]),
  );
  const tailored: Omit<Rulebook, 'digest'> = {
    ...rules,
    tasks,
    procedures,
    cards: tailorCards({ ...rules, tasks, procedures }, holds),
    policies: new Map(
      [...rules.policies].filter(([, { onlyWhen }]) => holds(onlyWhen)).map(([id, policy]) => [id, pointsHere(policy)]),
    ),
    forms: new Map([...rules.forms].filter(([, form]) => isHere(form))),
    duties,
    notHere: new Map(
      [
        ...[...rules.tasks.values()].filter(({ id }) => !withDuty.has(id)),
        ...[...rules.procedures.values()].filter(({ onlyWhen }) => !holds(onlyWhen)),
        ...[...rules.policies.values()].filter(({ onlyWhen }) => !holds(onlyWhen)),
        ...[...rules.forms.values()].filter((form) => !isHere(form)),
        ...[...rules.decisions.values()].filter(({ onlyWhen }) => !holds(onlyWhen)),
      ].map(({ id, title }) => [id, title]),
    ),
  };
  return { ...tailored, digest: createHash('sha256').update(canonicalJson(tailored)).digest('hex') };
}

function dutiesOf(
  task: Task,
  rules: LinkedRules,
  holds: (condition: Condition | undefined, facts?: Situation) => boolean,
): Duty[] {
  if (task.machine === undefined)
    return holds(task.onlyWhen) ? [{ task: task.id, ...(task.every && { every: task.every }) }] : [];
  return [...rules.machines.values()]
    .filter(({ kind, inService, facts }) => kind === task.machine && inService && holds(task.onlyWhen, facts))
    .map((machine) => ({ task: task.id, machine: machine.id, ...intervalOn(machine, task) }));
}

function intervalOn(machine: Machine, task: Task): Pick<Duty, 'every' | 'maker'> {
  const stated = machine.intervals[task.id];
  if (stated === undefined) return task.every === undefined ? {} : { every: task.every };
  if (task.every === undefined) return { every: stated.every, maker: stated.at };
  const every = strictestInterval(task.every, stated.every);
  const fromRules = every.time === task.every.time && every.cycles === task.every.cycles;
  return fromRules ? { every } : { every, maker: stated.at };
}

function truth(rules: LinkedRules, condition: Condition, facts: Situation): boolean | undefined {
  const values: Situation = { ...rules.clinic.facts, ...facts };
  return truthOf(condition, { facts: rules.facts, valueOf: (id) => values[id], possibleAnswers: ({ members }) => members });
}
