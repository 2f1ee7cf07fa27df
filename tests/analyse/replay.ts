import { expect } from 'vitest';
import type { DecisionImpact } from '../../src/analyse/impact.js';
import type { Analysis } from '../../src/analyse/questions.js';
import type { Looser } from '../../src/analyse/stricter.js';
import { type Answering, decide } from '../../src/decide/decide.js';
import type { Machine, Program } from '../../src/link/rulebook.js';

/** In the situation shown for each gap no rule speaks, and none may. */
export function replayGaps(rulebook: Answering, { decision, gaps }: Analysis): void {
  for (const { situation } of gaps)
    expect(decide(rulebook, decision, situation).reasons.filter(({ rule }) => rule !== undefined)).toEqual([]);
}

/** In the situation shown, the answers are the two that are told. */
export function replayLooser(before: Answering, after: Answering, decision: string, looser: Looser): void {
  const { situation, program } = looser;
  if (program === undefined) {
    expect(decide(before, decision, situation).outcome).toBe(looser.before);
    expect(decide(after, decision, situation).outcome).toBe(looser.after);
    return;
  }
  const offered = [before, after].map((rulebook) => {
    const choice = rulebook.decisions.get(decision);
    const kind = choice?.kind === 'choice' ? (choice.from[0] ?? '') : '';
    const machines = new Map([['any', machineWith(kind, program)]]);
    return decide({ ...rulebook, machines }, decision, situation).outcome;
  });
  expect(offered).toEqual(['none', 'any/program']);
}

function machineWith(kind: string, facts: Program['facts']): Machine {
  const place = { file: 'any.yaml', line: 1, column: 1 };
  const program: Program = { id: 'any/program', name: 'Any', machine: 'any', use: 'washing', facts, stages: [], place };
  return {
    id: 'any',
    kind,
    name: 'Any',
    maker: 'Any',
    model: 'Any',
    serial: '1',
    room: 'room',
    installed: '2025-01-01',
    instructions: { title: 'Any', edition: '1', kept: 'shelf' },
    inService: true,
    facts: {},
    intervals: {},
    programs: [program],
    place,
  };
}

/** In the situation shown for each region, the answers are the two that are told, and they differ. */
export function replayImpact(before: Answering, after: Answering, impact: DecisionImpact): void {
  const answersIn = (situation: Parameters<typeof decide>[2]) =>
    [before, after].map((rulebook) => decide(rulebook, impact.decision, situation));
  for (const change of impact.changes)
    for (const { situation } of change.regions)
      expect(answersIn(situation).map(({ outcome }) => outcome)).toEqual([change.before, change.after]);
  for (const { situation } of impact.open?.regions ?? []) {
    const [was, is] = answersIn(situation).map(({ outcome, possible }) => JSON.stringify([outcome, [...possible].sort()]));
    expect(was).not.toBe(is);
  }
}
