import type { Citation, FactValue } from '../link/rulebook.js';

/** Why an answer is what it is: a rule that applies, or may apply while facts are missing. */
export interface Reason {
  /** `decision/rule`; absent where no rule speaks and `otherwise` holds. */
  rule?: string;
  /** The outcome the rule gives; absent in a choice. */
  outcome?: string;
  because: string;
  /** False while a missing fact leaves open whether the rule applies. */
  certain: boolean;
  /** The facts its condition looked at, as given; a missing one is absent. */
  facts: Record<string, FactValue>;
  source?: Citation;
}

/** A program that meets every need, or one that does not and why. */
export interface Offer {
  /** `machine/program`. */
  program: string;
  meets: boolean;
  /** What it lacks: rule ids with the facts that stand against it. */
  lacks: { rule: string; facts: string[] }[];
}

/** The answer to one question about one situation. */
export interface Answer {
  decision: string;
  /** Verdict: the most restrictive outcome still possible. Choice: the best program that meets all needs, or `none`. */
  outcome: string;
  /** Verdict: every outcome still possible, least restrictive first. Choice: the acceptable programs, best first. */
  possible: string[];
  /** True when no missing fact can change the answer. */
  settled: boolean;
  reasons: Reason[];
  /** Missing facts that could still change the outcome, the one that most rules wait for first. */
  needed: string[];
  /** Procedures to follow instead. */
  instead: string[];
  cautions: string[];
  /** Choice: every program looked at, acceptable ones first. */
  offers?: Offer[];
  /** Digest of the rulebook that answered. */
  rulebook: string;
}
