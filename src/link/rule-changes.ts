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
  for (const { limit, was, becomes, layer, ...change } of changes) {
    const looser = change.looser ? undefined : looserWith(rules, limit, was, becomes, prove);
    requireStrict(linking, layer, looser === undefined ? change : { ...change, looser: true, because: looser });
  }
}

function looserWith(rules: Provable, limit: string, was: Quantity, becomes: Quantity, prove: ProveStrict): string | undefined {
  const [before, after] = [withLimit(rules, limit, was), withLimit(rules, limit, becomes)];
  for (const [id, decision] of before.decisions) {
    if (decision === rules.decisions.get(id)) continue;
    // Other decisions stay as they are: a stricter answer elsewhere is judged by itself.
    const looser = prove(id, before, {
      ...after,
      decisions: new Map(before.decisions).set(id, after.decisions.get(id) ?? decision),
    });
    if (looser !== undefined) return `in \`${id}\`, ${looser}`;
  }
  return undefined;
}

/** The rules as they would be with another value of a limit. What does not compare with it stays the same object. */
function withLimit({ facts, decisions, terms }: Provable, limit: string, value: Quantity): Provable {
  const [base, shown] = [inBaseUnit(value), formatQuantity(value)];
  const put = (condition: Condition): Condition => {
    if (condition.kind === 'test') {
      const { test } = condition;
      return test.kind === 'compare' && test.limit === limit
        ? { ...condition, test: { ...test, value: base, shown } }
        : condition;
    }
    if (condition.kind === 'not') {
      const of = put(condition.of);
      return of === condition.of ? condition : { ...condition, of };
    }
    const of = condition.of.map(put);
    return of.every((each, index) => each === condition.of[index]) ? condition : { ...condition, of };
  };
  return {
    terms,
    facts: new Map(
      [...facts].map(([id, fact]) => [id, fact.onlyWhen === undefined ? fact : { ...fact, onlyWhen: put(fact.onlyWhen) }]),
    ),
    decisions: new Map(
      [...decisions].map(([id, decision]) => {
        const rules = decision.rules.map((rule) => {
          const when = put(rule.when);
          const needs = rule.needs && put(rule.needs);
          return when === rule.when && needs === rule.needs ? rule : { ...rule, when, ...(needs !== undefined && { needs }) };
        });
        return [id, rules.every((each, index) => each === decision.rules[index]) ? decision : { ...decision, rules }];
      }),
    ),
  };
}
