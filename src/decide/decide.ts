import type { Choice, Clinic, Condition, FactValue, Program, Rule, Rulebook, Situation, Verdict } from '../link/rulebook.js';
import type { Answer, Offer, Reason } from './answer.js';
import { factsAgainst, factsOf, missingFacts } from './facts-of.js';
import { type Given, type Truth, truthOf } from './truth.js';

/** What answering looks at of a rulebook. */
export type Answering = Pick<Rulebook, 'facts' | 'decisions' | 'machines' | 'digest'> & { clinic: Pick<Clinic, 'facts'> };

/**
 * Answers one decision for one situation. The meaning of the rule language is what this file and `truth.ts` say.
 *
 * A rule is true, false or unknown in the situation. True and unknown rules both count toward what is possible, and the
 * most restrictive possible outcome is the answer, so a missing fact only ever makes an answer more careful. What the
 * clinic states about itself is added to `given`, which wins where both state a fact.
 *
 * @throws RangeError when the rulebook has no such decision.
 */
export function decide(rulebook: Answering, id: string, given: Situation): Answer {
  const decision = rulebook.decisions.get(id);
  if (decision === undefined) throw new RangeError(`no decision \`${id}\``);
  const known = knownFacts(rulebook, given);
  return decision.kind === 'verdict' ? giveVerdict(decision, rulebook, known) : chooseProgram(decision, rulebook, known);
}

/** What conditions are judged by in a situation, with the outcomes of other decisions worked out when asked for. */
export function knownFacts(rulebook: Answering, given: Situation): Given {
  const values: Situation = { ...rulebook.clinic.facts, ...given };
  const answers = new Map<string, readonly string[]>();
  return {
    facts: rulebook.facts,
    valueOf: (fact) => (Object.hasOwn(values, fact) ? values[fact] : undefined),
    possibleAnswers: ({ id, decision = '' }) => {
      const possible = answers.get(decision) ?? decide(rulebook, decision, withoutAnswers(rulebook, given)).possible;
      answers.set(decision, possible);
      const told = possible.filter((outcome) => outcome === values[id]);
      return told.length > 0 ? told : possible;
    },
  };
}

function giveVerdict(decision: Verdict, rulebook: Answering, given: Given): Answer {
  const rank = (outcome: string | undefined) => decision.outcomes.indexOf(outcome ?? '');
  const judged = judge(decision.rules, given);
  const certain = judged.filter(({ truth }) => truth === true);
  const floor = certain.length > 0 ? Math.max(...certain.map(({ rule }) => rank(rule.outcome))) : undefined;
  const open = judged.filter(({ truth, rule }) => truth === undefined && rank(rule.outcome) > (floor ?? -1));
  const surest = floor === undefined ? decision.otherwise : decision.outcomes[floor];
  const possible = decision.outcomes.filter((outcome) => outcome === surest || open.some(({ rule }) => rule.outcome === outcome));
  const settled = possible.length === 1;
  const counting = [...certain, ...(settled ? [] : open)];
  const outcome = possible.at(-1) ?? decision.otherwise;
  const noRule: Reason = { outcome: decision.otherwise, because: 'No rule speaks about this.', certain: true, facts: {} };
  return {
    decision: decision.id,
    outcome,
    possible,
    settled,
    reasons: counting.length > 0 ? counting.map(({ rule, truth }) => reasonOf(rule, truth, given)) : [noRule],
    // What to do instead belongs to the outcome that wins: that of a weaker one would contradict it.
    instead: insteadOf(counting.filter(({ rule }) => rule.outcome === outcome)),
    cautions: cautionsOf(counting),
    needed: settled ? [] : mostWaitedFor(open, rulebook, given),
    rulebook: rulebook.digest,
  };
}

function chooseProgram(decision: Choice, rulebook: Answering, given: Given): Answer {
  const judged = judge(decision.rules, given);
  const certain = judged.filter(({ truth }) => truth === true);
  const open = judged.filter(({ truth }) => truth === undefined);
  const speaks = certain.some(({ rule }) => !rule.addsOnly);
  const speaksLater = speaks || open.some(({ rule }) => !rule.addsOnly);
  const offers = programsOf(decision, rulebook).map((program): Offer => {
    const stated = knownFacts(rulebook, program.facts);
    const lacks = [...certain, ...open].filter(({ rule }) => truthOf(needsOf(rule), stated) !== true);
    return {
      program: program.id,
      meets: speaks && lacks.length === 0,
      mayMeet: speaksLater && lacks.every(({ truth }) => truth === undefined),
      lacks: lacks.map(({ rule }) => ({ rule: rule.id, facts: factsAgainst(needsOf(rule), stated) })),
    };
  });
  const named = (programs: Offer[]) => programs.map(({ program }) => program);
  const meeting = named(offers.filter(({ meets }) => meets));
  const mayMeet = named(offers.filter((offer) => offer.mayMeet));
  const settled = mayMeet.length === meeting.length;
  const counting = [...certain, ...(settled ? [] : open)];
  return {
    decision: decision.id,
    outcome: meeting[0] ?? 'none',
    possible: meeting.length > 0 ? mayMeet : [...mayMeet, 'none'],
    settled,
    reasons: counting.map(({ rule, truth }) => reasonOf(rule, truth, given)),
    instead: insteadOf(counting),
    cautions: cautionsOf(counting),
    needed: settled ? [] : mostWaitedFor(open, rulebook, given),
    offers: offers.sort((a, b) => Number(b.meets) - Number(a.meets) || Number(b.mayMeet) - Number(a.mayMeet)),
    rulebook: rulebook.digest,
  };
}

interface Judged {
  rule: Rule;
  truth: Truth;
}

function judge(rules: readonly Rule[], given: Given): Judged[] {
  return rules.map((rule) => ({ rule, truth: truthOf(rule.when, given) }));
}

function reasonOf(rule: Rule, truth: Truth, given: Given): Reason {
  const facts = factsOf(rule.when, given.facts).flatMap((fact): [string, FactValue][] => {
    const value = given.valueOf(fact);
    return value === undefined ? [] : [[fact, value]];
  });
  return {
    rule: rule.id,
    ...(rule.outcome !== undefined && { outcome: rule.outcome }),
    because: rule.because,
    certain: truth === true,
    facts: Object.fromEntries(facts),
    source: rule.source,
  };
}

function insteadOf(judged: readonly Judged[]): string[] {
  return [...new Set(judged.flatMap(({ rule }) => rule.instead ?? []))];
}

function cautionsOf(judged: readonly Judged[]): string[] {
  return [...new Set(judged.flatMap(({ rule }) => rule.cautions))];
}

function mostWaitedFor(open: readonly Judged[], rulebook: Answering, given: Given): string[] {
  const waiting = new Map<string, number>();
  for (const { rule } of open)
    for (const fact of askable(missingFacts(rule.when, given), rulebook, given)) waiting.set(fact, (waiting.get(fact) ?? 0) + 1);
  return [...waiting].sort(([, a], [, b]) => b - a).map(([fact]) => fact);
}

/** An answer fact cannot be asked of a person: what its decision still needs is asked instead. */
function askable(missing: readonly string[], rulebook: Answering, given: Given): string[] {
  const asked = missing.flatMap((id) => {
    const decision = rulebook.decisions.get(rulebook.facts.get(id)?.decision ?? '');
    if (decision === undefined) return [id];
    return askable(
      decision.rules.flatMap((rule) => missingFacts(rule.when, given)),
      rulebook,
      given,
    );
  });
  return [...new Set(asked)];
}

/** The programs that a choice looks at, the one preferred first. */
export function programsOf(decision: Choice, rulebook: Answering): Program[] {
  const machines = [...rulebook.machines.values()].filter(({ kind, inService }) => inService && decision.from.includes(kind));
  return machines.flatMap(({ programs }) => programs).sort((a, b) => compareByPreference(decision, a, b));
}

/** Negative where a program comes first, 0 where nothing ranks the two. */
export function compareByPreference(decision: Choice, a: Program, b: Program): number {
  for (const { fact, first } of decision.prefer) {
    const [left, right] = [a.facts[fact], b.facts[fact]];
    if (left === right) continue;
    if (left === undefined) return 1;
    if (right === undefined) return -1;
    return first === 'lowest' ? Number(left) - Number(right) : Number(right) - Number(left);
  }
  return 0;
}

/** What a rule asks of a program. What its maker does not state, a program does not offer. */
export function needsOf({ needs }: Rule): Condition {
  return needs ?? { kind: 'all', of: [] };
}

function withoutAnswers(rulebook: Answering, given: Situation): Situation {
  return Object.fromEntries(Object.entries(given).filter(([id]) => rulebook.facts.get(id)?.type !== 'answer'));
}
