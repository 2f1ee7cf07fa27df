import type { Fact, Rulebook } from '../../link/rulebook.js';
import type { Layout } from './lay-out.js';
import { literal } from './literal.js';

/** The types of the module, with the ids and members of one rulebook. */
export function typesOf(rulebook: Rulebook, { facts, decisions }: Layout): string {
  const stated = [...facts.values()].map(({ fact }) => `  ${literal(fact.id)}?: ${valueType(fact)} | null | undefined;`);
  return `${[
    `export type DecisionId = ${union([...rulebook.decisions.keys()])};`,
    `export type FactId = ${union([...facts.keys()])};`,
    '/** A situation. Quantities are plain numbers in the unit of the fact, days are `YYYY-MM-DD`; absent or null is not stated. */',
    `export interface Facts {\n${stated.join('\n')}\n}`,
    `export interface Outcomes {\n${decisions.map(({ decision }) => `  ${literal(decision.id)}: Brief;`).join('\n')}\n}`,
  ].join('\n')}\n${fixedTypes}`;
}

function union(words: readonly string[]): string {
  return words.length === 0 ? 'never' : words.map((word) => literal(word)).join(' | ');
}

function valueType({ type, members }: Fact): string {
  switch (type) {
    case 'boolean':
      return 'boolean';
    case 'enum':
    case 'answer':
      return union(members);
    case 'set':
      return `readonly (${union(members)})[]`;
    case 'date':
      return 'string';
    default:
      return 'number';
  }
}

const fixedTypes = `export declare const rulebook: Readonly<{
  title: string;
  clinic: string;
  version: string;
  on: string;
  digest: string;
  format: string;
}>;
export declare const decisions: readonly {
  id: DecisionId;
  kind: 'verdict' | 'choice';
  question: string;
  /** Least to most restrictive; of a choice its programs, the one preferred first, and none. */
  outcomes: readonly string[];
  reads: readonly FactId[];
}[];
export type Value = string | boolean | number | readonly string[];
export interface Reason {
  /** Absent where no rule speaks. */
  rule?: string;
  outcome?: string;
  because: string;
  /** False while a missing fact leaves open whether the rule applies. */
  certain: boolean;
  /** As the caller gave them. */
  facts: Record<string, Value>;
  source?: { id: string; at?: string; evidence?: string; checked?: string; note?: string };
}
export interface Offer {
  program: string;
  meets: boolean;
  mayMeet: boolean;
  lacks: { rule: string; facts: string[] }[];
}
/** The parts of an answer are worked out when they are read; toJSON gives them all. */
export interface Answer {
  readonly decision: DecisionId;
  readonly outcome: string;
  readonly possible: string[];
  readonly settled: boolean;
  readonly reasons: Reason[];
  readonly needed: FactId[];
  readonly instead: string[];
  readonly cautions: string[];
  readonly offers?: Offer[];
  readonly rulebook: string;
  toJSON(): Omit<Answer, 'toJSON'>;
}
/** An answer in short: the rules that apply, and those that may while facts are missing. */
export interface Brief {
  outcome: string;
  settled: boolean;
  rules: readonly string[];
  open: readonly string[];
}
export interface Condition {
  fact: FactId;
  test: Readonly<{ is: string; members?: readonly (string | boolean)[]; value?: number | string; unit?: string; limit?: string }>;
  /** Of the answer of another decision: those still possible. Absent where it is not stated. */
  value: Value | null | undefined;
  /** Null: unknown. */
  truth: boolean | null;
}
export interface Trace {
  decision: DecisionId;
  rules: { rule: string; truth: boolean | null; conditions: Condition[] }[];
  rulebook: string;
}
/**
 * By fact id. Values as in a situation, with NaN as well for not stated; or of an enum, a boolean or an answer the places of members
 * (of a boolean 0 and 1), of a set bit masks by place of member, in a typed array of whole numbers, where the largest number
 * (-1 where signed) is not stated. Places are those of describeFact(...).members.
 */
export type Columns = Readonly<Partial<Record<FactId, ArrayLike<unknown> | null>>>;
export interface Many {
  decision: DecisionId;
  /** By number in outcomes, the outcome. */
  names: readonly string[];
  rules: readonly string[];
  /** How many 32-bit words of fired belong to one situation. */
  words: number;
  outcomes: Uint8Array | Uint16Array;
  /** 1 where no missing fact can change the outcome. */
  settled: Uint8Array;
  /** Rule r applies for certain in situation i where fired[i * words + (r >> 5)] has bit r & 31. */
  fired: Uint32Array;
}
/** A value that does not fit its fact. */
export declare class FactError extends TypeError {
  readonly fact: FactId;
  readonly expected: string;
}
/** Throws a RangeError for an unknown decision, a FactError for a value that does not fit. The same holds for all below. */
export declare function decide(decision: DecisionId, facts: Facts): Answer;
export declare function outcomeOf(decision: DecisionId, facts: Facts): string;
export declare function decideAll(facts: Facts): Outcomes;
export declare function trace(decision: DecisionId, facts: Facts): Trace;
export declare function decideMany(decision: DecisionId, columns: Columns, count: number): Many;
export declare function decideAllMany(columns: Columns, count: number): Record<DecisionId, Many>;
export declare function describeFact(fact: FactId): {
  id: FactId;
  type: 'enum' | 'set' | 'boolean' | 'quantity' | 'count' | 'date' | 'answer';
  members?: string[];
  unit?: string;
  bounds?: string;
  expected: string;
};
`;
