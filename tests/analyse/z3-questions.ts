import type { Answering } from '../../src/decide/decide.js';
import type { Decision } from '../../src/link/rulebook.js';
import type { Z3 } from './z3.js';
import { and, type Decided, not, or, Script, type Term } from './z3-encoding.js';

/** What z3 says about one decision by itself. */
export interface Said {
  hasGap: boolean;
  /** Ids of rules that no situation makes true. */
  neverTrue: string[];
  /** Ids of the other rules of a verdict that never give the outcome. */
  overruled: string[];
}

/** What z3 says about two versions of a decision. */
export interface Compared {
  isLooser: boolean;
  /** Held to what the clinics state about themselves. */
  isChanged: boolean;
}

/** The questions that z3 was asked so far, by answer. */
export const asked = { yes: 0, no: 0 };

async function askAll(z3: Z3, script: Script, terms: readonly Term[]): Promise<boolean[]> {
  const switches = terms.map((each) => script.switchFor(each));
  const found = await z3.ask(script.text, switches);
  for (const each of found) asked[each ? 'yes' : 'no'] += 1;
  return found;
}

/** Gaps and rules without effect, as `analyseDecision` looks for them. */
export async function lookAt(
  z3: Z3,
  rulebook: Answering,
  decision: Decision,
  looked: (index: number) => boolean = () => true,
): Promise<Said> {
  const script = new Script([rulebook]);
  const { rules, outcome } = script.decision(rulebook, decision.id);
  const marks = decision.gaps.map(({ when }) => script.condition(rulebook, when ?? { kind: 'all', of: [] }, true).isTrue);
  const gap = and([...rules.map(({ notFalse }) => not(notFalse)), ...marks.map(not)]);
  const isHeld = heldFacts(script, [rulebook]);
  const chosen = rules.filter((_, index) => looked(index));
  const found = await askAll(z3, script, [
    and([gap, ...allStated(script, [rulebook])]),
    ...chosen.map(({ isTrue }) => and([isTrue, ...isHeld])),
    ...(decision.kind === 'choice'
      ? []
      : chosen.map(({ rule, isTrue }) => and([isTrue, outcome.get(rule.outcome ?? '') ?? 'false', ...isHeld]))),
  ]);
  const [hasGap = false, ...ofRules] = found;
  const isAlive = (index: number) => ofRules[index] === true;
  const ids = (keep: (index: number) => boolean) => chosen.flatMap(({ rule }, index) => (keep(index) ? [rule.id] : []));
  return {
    hasGap,
    neverTrue: ids((index) => !isAlive(index)),
    overruled: ids((index) => isAlive(index) && ofRules[chosen.length + index] === false),
  };
}

/** Strictness and change, as `looserIn` and `impactOf` look for them. */
export async function compare(z3: Z3, before: Answering, after: Answering, id: string): Promise<Compared> {
  const script = new Script([before, after]);
  const [was, is] = [script.decision(before, id), script.decision(after, id)];
  const isLooser = looserTerm(script, before, after, id);
  const looserOfItself = looserTerm(script, before, before, id);
  // The same text twice needs no question.
  if (isSame(was, is) && isLooser === looserOfItself) return { isLooser: false, isChanged: false };
  const [looser = false, changed = false] = await askAll(z3, script, [
    isLooser,
    and([differ(was, is), ...heldFacts(script, [before, after])]),
  ]);
  return { isLooser: looser, isChanged: changed };
}

function isSame(was: Decided, is: Decided): boolean {
  const text = ({ outcome, possible }: Decided) => JSON.stringify([...outcome, ...possible]);
  return text(was) === text(is);
}

/** Only whether an answer of a decision changes. */
export async function changes(z3: Z3, before: Answering, after: Answering, id: string): Promise<boolean> {
  const script = new Script([before, after]);
  const differing = differ(script.decision(before, id), script.decision(after, id));
  const [changed = false] = await askAll(z3, script, [and([differing, ...heldFacts(script, [before, after])])]);
  return changed;
}

function looserTerm(script: Script, before: Answering, after: Answering, id: string): Term {
  const [old, next] = [before.decisions.get(id), after.decisions.get(id)];
  if (old?.kind === 'choice') return and([script.offersAny(after, id), not(script.offersAny(before, id))]);
  if (next?.kind !== 'verdict') return 'false';
  const { outcomes } = next;
  const [was, is] = [script.decision(before, id), script.decision(after, id)];
  return or(
    [...was.outcome].flatMap(([outcome, held]) =>
      [...is.outcome].flatMap(([other, holds]) =>
        outcomes.indexOf(other) < outcomes.indexOf(outcome) ? [and([held, holds])] : [],
      ),
    ),
  );
}

/** That the outcome differs, or what is possible. */
function differ(was: Decided, is: Decided): Term {
  const answers = [...new Set([...was.possible.keys(), ...is.possible.keys()])];
  return or(
    answers.flatMap((each) =>
      (['outcome', 'possible'] as const).map(
        (which) => `(distinct ${was[which].get(each) ?? 'false'} ${is[which].get(each) ?? 'false'})`,
      ),
    ),
  );
}

/** That nobody says otherwise than the clinics do. */
function heldFacts(script: Script, rulebooks: readonly Answering[]): Term[] {
  const held = new Set(rulebooks.flatMap(({ clinic }) => Object.keys(clinic.facts)));
  return script.facts().flatMap(({ id, stated }) => (held.has(id) ? [not(stated)] : []));
}

/** That all is stated but what the clinic states itself and what other decisions answer. */
function allStated(script: Script, rulebooks: readonly Answering[]): Term[] {
  const held = new Set(rulebooks.flatMap(({ clinic }) => Object.keys(clinic.facts)));
  return script.facts().map(({ id, stated, fact }) => (held.has(id) || fact.type === 'answer' ? not(stated) : stated));
}
