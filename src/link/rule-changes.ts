import { formatQuantity, inBaseUnit, type Quantity } from '../measure/quantity.js';
import type { Layer, Linking } from './linking.js';
import { type ProposedChange, requireStrict } from './require-strict.js';
import type { Condition, Decision, Fact, Term } from './rulebook.js';

/** A change to the rules of a decision, with the decision before and after it. */
export interface RuleChange extends Omit<ProposedChange, 'looser' | 'because'> {
  before: Decision;
  after: Decision;
  layer: Layer;
}

/** A change of a limit's value. It comes with what its direction says: for most limits nothing else depends on it. */
export interface LimitChange extends ProposedChange {
  limit: string;
  was: Quantity;
  becomes: Quantity;
  layer: Layer;
}

/** Rules as the proof of strictness takes them. */
export interface Provable {
  facts: ReadonlyMap<string, Fact>;
  decisions: ReadonlyMap<string, Decision>;
  terms: ReadonlyMap<string, Term>;
}

/**
 * Says in words where a decision answers less strictly in `after` than in `before`, over all situations; nothing where it is proved
 * that it does not. What cannot be decided counts as less strict.
 */
export type ProveStrict = (decision: string, before: Provable, after: Provable) => string | undefined;

/**
 * Holds each change of rules to "layers only tighten", in the order in which they are made. Each is looked at by itself, with all
 * other decisions as they are in the end: what a stricter answer does to a decision that looks at it is not held against it.
 */
export function requireStrictRules(linking: Linking, rules: Provable, changes: readonly RuleChange[], prove: ProveStrict): void {
  const on = (decision: Decision): Provable => ({ ...rules, decisions: new Map(rules.decisions).set(decision.id, decision) });
  for (const { before, after, layer, ...change } of changes) {
    const looser = prove(before.id, on(before), on(after));
    requireStrict(linking, layer, { ...change, looser: looser !== undefined, because: looser ?? '' });
  }
}

/**
 * Holds each change of a limit to "layers only tighten": its direction, and every answer that depends on it, since a rule may
 * compare with it the other way round.
 */
export function requireStrictLimits(
  linking: Linking,
  rules: Provable,
  changes: readonly LimitChange[],
  prove: ProveStrict,
): void {
  const users = usersOf(rules);
  for (const { limit, was, becomes, layer, ...change } of changes) {
    const comparing = users.get(limit);
    const looser =
      change.looser || comparing === undefined ? undefined : looserWith(rules, comparing, limit, was, becomes, prove);
    requireStrict(linking, layer, looser === undefined ? change : { ...change, looser: true, because: looser });
  }
}

/** What compares with a limit. */
interface Comparing {
  decisions: Set<string>;
  facts: Set<string>;
}

/** Of each limit that a condition compares with, the decisions and the facts that do. */
function usersOf({ facts, decisions }: Provable): Map<string, Comparing> {
  const users = new Map<string, Comparing>();
  const note = (condition: Condition, kind: keyof Comparing, id: string): void => {
    if (condition.kind === 'not') note(condition.of, kind, id);
    else if (condition.kind !== 'test') for (const each of condition.of) note(each, kind, id);
    else if (condition.test.kind === 'compare' && condition.test.limit !== undefined) {
      const { limit } = condition.test;
      const known = users.get(limit) ?? { decisions: new Set(), facts: new Set() };
      known[kind].add(id);
      users.set(limit, known);
    }
  };
  for (const [id, { onlyWhen }] of facts) if (onlyWhen !== undefined) note(onlyWhen, 'facts', id);
  for (const [id, { rules }] of decisions)
    for (const { when, needs } of rules) {
      note(when, 'decisions', id);
      if (needs !== undefined) note(needs, 'decisions', id);
    }
  return users;
}

function looserWith(
  rules: Provable,
  comparing: Comparing,
  limit: string,
  was: Quantity,
  becomes: Quantity,
  prove: ProveStrict,
): string | undefined {
  const [before, after] = [withLimit(rules, comparing, limit, was), withLimit(rules, comparing, limit, becomes)];
  // A fact that only has a meaning up to a limit can be looked at by any decision.
  const ids = comparing.facts.size > 0 ? [...rules.decisions.keys()] : comparing.decisions;
  for (const id of ids) {
    const decision = before.decisions.get(id);
    if (decision === undefined) continue;
    // Other decisions stay as they are: a stricter answer elsewhere is judged by itself.
    const looser = prove(id, before, {
      ...after,
      decisions: new Map(before.decisions).set(id, after.decisions.get(id) ?? decision),
    });
    if (looser !== undefined) return `in \`${id}\`, ${looser}`;
  }
  return undefined;
}

/** The rules as they would be with another value of a limit. */
function withLimit({ facts, decisions, terms }: Provable, comparing: Comparing, limit: string, value: Quantity): Provable {
  const [base, shown] = [inBaseUnit(value), formatQuantity(value)];
  const put = (condition: Condition): Condition => {
    if (condition.kind === 'test') {
      const { test } = condition;
      return test.kind === 'compare' && test.limit === limit
        ? { ...condition, test: { ...test, value: base, shown } }
        : condition;
    }
    if (condition.kind === 'not') return { ...condition, of: put(condition.of) };
    return { ...condition, of: condition.of.map(put) };
  };
  return {
    terms,
    facts:
      comparing.facts.size === 0
        ? facts
        : new Map(
            [...facts].map(([id, fact]) => [
              id,
              fact.onlyWhen === undefined || !comparing.facts.has(id) ? fact : { ...fact, onlyWhen: put(fact.onlyWhen) },
            ]),
          ),
    decisions: new Map(
      [...decisions].map(([id, decision]) => {
        if (!comparing.decisions.has(id)) return [id, decision];
        const rules = decision.rules.map((rule) => ({
          ...rule,
          when: put(rule.when),
          ...(rule.needs !== undefined && { needs: put(rule.needs) }),
        }));
        return [id, { ...decision, rules }];
      }),
    ),
  };
}
