import { type Answering, programsOf } from '../decide/decide.js';
import type { Decision, Fact, Rule } from '../link/rulebook.js';
import { testsOf } from './pieces.js';

/**
 * Whether two rulebooks say a decision in the same words as far as answers depend on them: its rules, the facts they look at and
 * under which these are asked, what the clinic states of them, programs, and the decisions whose answers they look at. Then no
 * answer differs; where it is false, answers may still be the same.
 */
export function isSaidAlike(id: string, before: Answering, after: Answering, seen = new Set<string>()): boolean {
  if (seen.has(id)) return true;
  seen.add(id);
  const [old, next] = [before.decisions.get(id), after.decisions.get(id)];
  if (old === undefined || next === undefined || !isSameDecision(old, next)) return false;
  // Of programs, all that they state counts.
  if (old.kind === 'choice' && next.kind === 'choice') {
    if (!isSame(programsOf(old, before), programsOf(next, after)) || !isSame(before.clinic.facts, after.clinic.facts))
      return false;
  }
  const conditions = old.rules.flatMap(({ when, needs }) => [when, ...(needs === undefined ? [] : [needs])]);
  // The guards of the facts of one are those of the other, as is checked of each.
  const facts = new Set(testsOf(conditions, before.facts).map(({ fact }) => fact));
  return [...facts].every((fact) => {
    const [was, is] = [before.facts.get(fact), after.facts.get(fact)];
    if (was === undefined || is === undefined || !isSameFact(was, is)) return false;
    if (!isSame(before.clinic.facts[fact], after.clinic.facts[fact])) return false;
    return was.decision === undefined || isSaidAlike(was.decision, before, after, seen);
  });
}

function isSameDecision(a: Decision, b: Decision): boolean {
  if (a === b) return true;
  const head = (each: Decision) => (each.kind === 'verdict' ? [each.outcomes, each.otherwise] : [each.from, each.prefer]);
  return a.kind === b.kind && isSame(head(a), head(b)) && isSame(a.rules.map(saidBy), b.rules.map(saidBy));
}

/** What of a rule answers depend on. */
function saidBy({ when, outcome, needs, addsOnly }: Rule): unknown {
  return [when, outcome, needs, addsOnly];
}

function isSameFact(a: Fact, b: Fact): boolean {
  const said = ({ type, members, unit, minimum, maximum, decision, onlyWhen }: Fact) => [
    type,
    members,
    unit,
    minimum,
    maximum,
    decision,
    onlyWhen,
  ];
  return a === b || isSame(said(a), said(b));
}

function isSame(a: unknown, b: unknown): boolean {
  return a === b || JSON.stringify(a) === JSON.stringify(b);
}
