import type { Choice, Machine, Rulebook, Verdict } from '../../link/rulebook.js';
import type { Figure } from '../figures/figure.js';
import { ruleText, saidText } from '../text/markdown-safe.js';
import { capitalize } from '../text/say-list.js';
import type { Bibliography } from './cite.js';
import { modelChoice, modelPrograms } from './model-choice.js';
import { modelDecision } from './model-decision.js';
import { modelPolicy } from './model-policy.js';
import { modelProcedure } from './model-procedure.js';
import { modelSchedule } from './model-schedule.js';
import { printedDecisions } from './printed-decisions.js';
import { modelRegister } from './register.js';

/** The figure that a chapter opens with, by stage. */
const figuresByStage: Readonly<Record<string, string>> = { classes: 'instrument', failure: 'failure' };

/** One chapter a stage, in the order of the terms of the domain `stage`; stages about which nothing is said are left out. */
export function modelChapters(rulebook: Rulebook, bibliography: Bibliography, figures: ReadonlyMap<string, Figure>) {
  const stages = [...rulebook.terms.values()].filter(({ domain }) => domain === 'stage');
  const shown = new Set<string>();
  const chapters = stages.map(({ id, label, definition }) => ({
    id,
    title: capitalize(label),
    about: ruleText(definition),
    figure: figures.get(figuresByStage[id] ?? '')?.id ?? null,
    ...modelStage(rulebook, bibliography, id, shown),
  }));
  return chapters.filter(
    ({ procedures, policies, decisions, choices, register, schedule, opening }) =>
      [procedures.length, policies.length, decisions.length, choices.length].some((count) => count > 0) ||
      register !== null ||
      schedule !== null ||
      opening !== null,
  );
}

function modelStage(rulebook: Rulebook, bibliography: Bibliography, stage: string, shown: Set<string>) {
  const ofStage = <T extends { stage: string; order: number }>(all: Iterable<T>): T[] =>
    [...all].filter((each) => each.stage === stage).sort((a, b) => a.order - b.order);
  const procedures = ofStage(rulebook.procedures.values());
  const policies = ofStage(rulebook.policies.values());
  const decisions = ofStage(printedDecisions(rulebook));
  const verdicts = decisions.filter((each): each is Verdict => each.kind === 'verdict');
  const choices = decisions.filter((each): each is Choice => each.kind === 'choice');
  const machines = takeMachines(rulebook, choices, shown);
  return {
    procedures: procedures.map((each) => modelProcedure(rulebook, bibliography, each)),
    policies: policies.map((each) => modelPolicy(rulebook, bibliography, each)),
    decisions: verdicts.map((each) => modelDecision(rulebook, bibliography, each)),
    choices: choices.map((each) => modelChoice(rulebook, bibliography, each)),
    programs: machines.map((machine) => modelPrograms(rulebook, machine)),
    register: stage === 'classes' && rulebook.instruments.size > 0 ? modelRegister(rulebook) : null,
    schedule:
      stage === 'care' && rulebook.duties.length > 0 ? modelSchedule(rulebook, bibliography, otherMachines(rulebook)) : null,
    opening: stage === 'failure' ? modelOpening(rulebook) : null,
  };
}

/** The machines whose programs are chosen here and have not been shown in an earlier chapter. */
function takeMachines(rulebook: Rulebook, choices: readonly Choice[], shown: Set<string>): Machine[] {
  const kinds = choices.flatMap(({ from }) => from);
  return [...rulebook.machines.values()].filter(({ id, kind, programs }) => {
    if (shown.has(id) || programs.length === 0 || !kinds.includes(kind)) return false;
    shown.add(id);
    return true;
  });
}

/** Machines with programs among which nothing is chosen. */
function otherMachines(rulebook: Rulebook): Machine[] {
  const chosen = printedDecisions(rulebook).flatMap((each) => (each.kind === 'choice' ? each.from : []));
  return [...rulebook.machines.values()].filter(({ kind, programs }) => programs.length > 0 && !chosen.includes(kind));
}

function modelOpening(rulebook: Rulebook) {
  const machines = [...rulebook.machines.values()].flatMap(({ id, name, opening, instructions }) =>
    opening === undefined
      ? []
      : [{ id, name, title: `${instructions.title}, ${instructions.edition}`, steps: opening.map((step) => saidText(step, id)) }],
  );
  return machines.length === 0 ? null : machines;
}
