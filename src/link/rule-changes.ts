import type { Place } from '../read/finding.js';
import type { Located, Path } from '../read/read-documents.js';
import type { Deviation } from '../read/types.gen.js';
import type { Layer, Linking } from './linking.js';
import { requireStrict } from './require-strict.js';
import type { Decision, Fact, Term } from './rulebook.js';

/** A change to the rules of a decision, with the decision before and after it. */
export interface RuleChange {
  before: Decision;
  after: Decision;
  layer: Layer;
  /** In words, for a message. */
  what: string;
  deviation: Deviation | undefined;
  place: Place;
  document: Located;
  path: Path;
}

/** Rules as the proof of strictness takes them: facts, and every decision as it is in the end but the one in question. */
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

/** Holds each change of rules to "layers only tighten", in the order in which they are made. */
export function requireStrictRules(linking: Linking, rules: Provable, changes: readonly RuleChange[], prove: ProveStrict): void {
  const on = (decision: Decision): Provable => ({ ...rules, decisions: new Map(rules.decisions).set(decision.id, decision) });
  for (const { before, after, layer, ...change } of changes) {
    const looser = prove(before.id, on(before), on(after));
    requireStrict(linking, layer, { ...change, looser: looser !== undefined, because: looser ?? '' });
  }
}
