import { testsOf } from '../analyse/pieces.js';
import type { Condition, Decision, Fact, FactValue, Rulebook, Test } from '../link/rulebook.js';
import { calendarDay } from '../measure/day-number.js';
import { fromBaseUnit } from '../measure/quantity.js';

/*
 * What all emitted evaluators agree on: how a situation is written for them. A quantity is a number in its fact's own unit, a date
 * a calendar day, a set a list of its members, and a fact that is not stated is absent or null. Thresholds are written in the fact's
 * unit to twelve digits, as people write them: JSON Logic and SQL take a number that is nearer to one than that as it stands.
 */

/** A value as the emitted evaluators take it; quantities come in the base unit. */
export function toContract(value: FactValue, fact: Fact): unknown {
  if (typeof value !== 'number') return value;
  if (fact.type === 'date') return calendarDay(value);
  return boundOf(value, fact);
}

/** A number that a fact is compared with, in the fact's own unit. */
export function boundOf(value: number, { type, unit }: Fact): number {
  return type === 'quantity' && unit !== undefined ? fromBaseUnit(value, unit).value : value;
}

/** Facts as the emitted evaluators take them. */
export function situationToContract(
  situation: Readonly<Record<string, FactValue>>,
  facts: ReadonlyMap<string, Fact>,
): Record<string, unknown> {
  return Object.fromEntries(
    Object.entries(situation).flatMap(([id, value]) => {
      const fact = facts.get(id);
      return fact === undefined ? [] : [[id, toContract(value, fact)]];
    }),
  );
}

/** What a decision looks at by itself: facts that a caller states, and answers of other decisions. */
export interface Reads {
  facts: Fact[];
  answers: Fact[];
}

/** What a decision looks at by itself, in the order in which its rules name it. */
export function readsOf(decision: Decision, facts: ReadonlyMap<string, Fact>): Reads {
  const ids = [
    ...new Set(
      testsOf(
        decision.rules.map(({ when }) => when),
        facts,
      ).map(({ fact }) => fact),
    ),
  ];
  const read = ids.flatMap((id) => facts.get(id) ?? []);
  return { facts: read.filter(({ type }) => type !== 'answer'), answers: read.filter(({ type }) => type === 'answer') };
}

/**
 * Everything that a caller may state for a decision, and that is checked: what it and the decisions it asks look at. A stated answer
 * counts only for the decision that was asked.
 */
export function statable(rulebook: Pick<Rulebook, 'decisions' | 'facts'>, id: string): Fact[] {
  const stated = new Map<string, Fact>();
  const seen = new Set<string>();
  const walk = (decisionId: string): void => {
    const decision = rulebook.decisions.get(decisionId);
    if (decision === undefined || seen.has(decisionId)) return;
    seen.add(decisionId);
    const { facts, answers } = readsOf(decision, rulebook.facts);
    for (const fact of [...facts, ...answers]) stated.set(fact.id, fact);
    for (const { decision: asked = '' } of answers) walk(asked);
  };
  walk(id);
  return [...stated.values()];
}

/** The decisions of a rulebook, each after those whose answers it looks at. */
export function inOrderOfAnswers(rulebook: Pick<Rulebook, 'decisions' | 'facts'>): Decision[] {
  const ordered = new Set<Decision>();
  const walk = (decision: Decision): void => {
    if (ordered.has(decision)) return;
    for (const { decision: asked = '' } of readsOf(decision, rulebook.facts).answers) {
      const before = rulebook.decisions.get(asked);
      if (before !== undefined) walk(before);
    }
    ordered.add(decision);
  };
  for (const decision of rulebook.decisions.values()) walk(decision);
  return [...ordered];
}

/** A condition as another language says it: when it is certainly true, and when it is not certainly false. */
export interface KleeneWriter<T> {
  all(parts: T[]): T;
  any(parts: T[]): T;
  not(part: T): T;
  /** A fact that is stated and passes. */
  passes(fact: Fact, test: Test): T;
  notStated(fact: Fact): T;
  /** An answer of another decision that can only be one of these, or that can be. */
  answerIsOneOf(fact: Fact, members: readonly string[]): T;
  answerMayBe(fact: Fact, members: readonly string[]): T;
}

/** Says a condition in a language of two truth values: `certain` where it is true, `possible` where it is true or unknown. */
export function writeKleene<T>(
  condition: Condition,
  side: 'certain' | 'possible',
  facts: ReadonlyMap<string, Fact>,
  writer: KleeneWriter<T>,
): T {
  const again = (part: Condition, other = side) => writeKleene(part, other, facts, writer);
  switch (condition.kind) {
    case 'all':
      return writer.all(condition.of.map((part) => again(part)));
    case 'any':
      return writer.any(condition.of.map((part) => again(part)));
    case 'not':
      return writer.not(again(condition.of, side === 'certain' ? 'possible' : 'certain'));
    case 'test': {
      const fact = facts.get(condition.fact);
      if (fact === undefined) throw new RangeError(`unknown fact ${condition.fact}`);
      const itself = writeTest(fact, condition.test, side, writer);
      return fact.onlyWhen === undefined ? itself : writer.all([again(fact.onlyWhen), itself]);
    }
  }
}

function writeTest<T>(fact: Fact, test: Test, side: 'certain' | 'possible', writer: KleeneWriter<T>): T {
  if (fact.type === 'answer') {
    const members = fact.members.filter((member) => answerPasses(member, test));
    return side === 'certain' ? writer.answerIsOneOf(fact, members) : writer.answerMayBe(fact, members);
  }
  const passes = writer.passes(fact, test);
  return side === 'certain' ? passes : writer.any([writer.notStated(fact), passes]);
}

/** Whether an outcome passes a test on an answer. */
export function answerPasses(member: string, test: Test): boolean {
  if (test.kind === 'compare') return false;
  return test.members.some((each) => each === member) !== (test.kind === 'none-of');
}
