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
  /** The facts its condition looked at, quantities in base units; a missing one is absent. */
  facts: Record<string, FactValue>;
  source?: Citation;
}

/** A program of the clinic beside the needs, and what it lacks of them. */
export interface Offer {
  /** `machine/program`. */
  program: string;
  /** It has all that is needed, whatever the missing facts turn out to be. */
  meets: boolean;
  /** It has all that is needed for certain; a missing fact may still ask for more. */
  mayMeet: boolean;
  /** What it lacks, or may lack: rule ids with the facts that stand against it. */
  lacks: { rule: string; facts: string[] }[];
}

/** The answer to one question about one situation. */
export interface Answer {
  decision: string;
  /** Verdict: the most restrictive outcome still possible. Choice: the best program that meets all needs for certain, or `none`. */
  outcome: string;
  /**
   * Verdict: every outcome still possible, least restrictive first. Choice: every program that may meet the needs, best
   * first, and `none` last while none does for certain.
   */
  possible: string[];
  /** True when no missing fact can change the answer. */
  settled: boolean;
  reasons: Reason[];
  /** Missing facts that could still change the outcome, the one that most rules wait for first. */
  needed: string[];
  /** Procedures to follow instead: of a verdict, those of the rules that give its outcome. */
  instead: string[];
  cautions: string[];
  /** Choice: every program looked at, those that meet the needs first, then those that may. */
  offers?: Offer[];
  /** Digest of the rulebook that answered. */
  rulebook: string;
}
