import { representativesOf } from '../../analyse/representatives.js';
import { decide, knownFacts, needsOf, programsOf } from '../../decide/decide.js';
import { truthOf } from '../../decide/truth.js';
import type { Choice, Decision, Rule, Rulebook, Situation, Verdict } from '../../link/rulebook.js';
import { inOrderOfAnswers, readsOf, situationToContract } from '../contract.js';
import { headOf } from '../head.js';
import { factSchemas } from '../schema.js';
import { and, conditionToLogic, type Logic, not, or, variable } from './logic.js';

/** A decision in the bundle. `certain` and `open` of the data are lists of the ids of its rules that are true, and unknown. */
export interface BundledDecision {
  kind: 'verdict' | 'choice';
  question: string;
  /** Outcomes from the least to the most restrictive; of a choice, programs with the one preferred first, and `none`. */
  outcomes: string[];
  /** Facts that it looks at itself. */
  reads: string[];
  /** Answers that it looks at: the fact's id, and the decision that gives it. */
  asks: Record<string, string>;
  rules: BundledRule[];
  /** Over `certain` and `open`: the outcome, the list of possible outcomes, and whether no missing fact can change the answer. */
  outcome: Logic;
  possible: Logic;
  settled: Logic;
}

export interface BundledRule {
  id: string;
  outcome?: string;
  because: string;
  source: string;
  /** Over `facts` and `answers`: when the rule applies for certain, and when it may apply. */
  certain: Logic;
  possible: Logic;
}

/** A situation with the answer that any implementation must give. */
export interface Vector {
  decision: string;
  facts: Record<string, unknown>;
  outcome: string;
  possible: string[];
  settled: boolean;
  certain: string[];
  open: string[];
}

export interface Bundle {
  format: string;
  about: string[];
  rulebook: ReturnType<typeof headOf>;
  /** What the clinic states about itself, by fact: it holds where a caller does not state the fact. */
  clinic: Record<string, unknown>;
  /** JSON Schema of each fact's value. */
  facts: Record<string, object>;
  decisions: Record<string, BundledDecision>;
  vectors: Vector[];
}

/** The rulebook for any language that has a JSON Logic library, with what to do to use it and to prove that it is used rightly. */
export function rulebookToBundle(rulebook: Rulebook): Bundle {
  const decisions = inOrderOfAnswers(rulebook);
  return {
    format: 'clinic-rulebook-json-logic/1',
    about,
    rulebook: headOf(rulebook),
    clinic: situationToContract(rulebook.clinic.facts, rulebook.facts),
    facts: factSchemas(rulebook),
    decisions: Object.fromEntries(decisions.map((decision) => [decision.id, bundle(decision, rulebook)])),
    vectors: decisions.flatMap(({ id }) => vectorsOf(rulebook, id)),
  };
}

/** The bundle as text: one line a rule and a vector, so that changes can be read. */
export function bundleToJson({ decisions, vectors, facts, ...head }: Bundle): string {
  const lines = (entries: readonly string[]) => entries.map((each) => `    ${each}`).join(',\n');
  const pair = ([key, value]: [string, unknown]) => `${JSON.stringify(key)}: ${JSON.stringify(value)}`;
  const decision = ([id, { rules, ...rest }]: [string, BundledDecision]) =>
    `    ${JSON.stringify(id)}: {\n${[
      ...Object.entries(rest).map((each) => `      ${pair(each)}`),
      `      "rules": [\n${rules.map((rule) => `        ${JSON.stringify(rule)}`).join(',\n')}\n      ]`,
    ].join(',\n')}\n    }`;
  return [
    '{',
    ...Object.entries(head).map((each) => `  ${pair(each)},`),
    `  "facts": {\n${lines(Object.entries(facts).map(pair))}\n  },`,
    `  "decisions": {\n${Object.entries(decisions).map(decision).join(',\n')}\n  },`,
    `  "vectors": [\n${lines(vectors.map((each) => JSON.stringify(each)))}\n  ]`,
    '}\n',
  ].join('\n');
}

const about = [
  'How to answer a decision with any JSON Logic library:',
  '1. Check each fact that is stated against its schema under `facts`, for the facts that the decision and those it asks read. A value that does not fit is an error, not a missing fact. A fact that is null is not stated. Other keys are ignored.',
  '2. Fill in what the clinic states about itself, under `clinic`, for facts that are not stated.',
  '3. Put the facts under `facts` of the data, nested at the dots of their ids: `load.wait` goes to facts, load, wait.',
  '4. Answer each decision under `asks` first, by the same steps, with the same facts but without what the caller states of any answer. Put its list of possible outcomes under `answers` of the data, nested like the facts. Where the caller states the answer of the decision asked, and it is in that list, it is the whole list. This holds only for the decision that was asked, not for those it asks.',
  '5. Run `certain` and `possible` of each rule on the data. Make a list of the ids of rules that are certain, and one of those that are possible but not certain.',
  '6. Run `outcome`, `possible` and `settled` of the decision on `{"certain": [...], "open": [...]}`.',
  'An outcome is the most restrictive one that is still possible: what is not known makes an answer more careful.',
  'Run every entry of `vectors` in the same way. If one of them comes out otherwise, the library or the program around it does not keep these rules, and must not be used.',
];

function bundle(decision: Decision, rulebook: Rulebook): BundledDecision {
  const { facts, answers } = readsOf(decision, rulebook.facts);
  const rules = decision.rules.map(
    (rule): BundledRule => ({
      id: rule.id,
      ...(rule.outcome !== undefined && { outcome: rule.outcome }),
      because: rule.because,
      source: rule.source.id,
      certain: conditionToLogic(rule.when, 'certain', rulebook.facts),
      possible: conditionToLogic(rule.when, 'possible', rulebook.facts),
    }),
  );
  return {
    kind: decision.kind,
    question: decision.question,
    reads: facts.map(({ id }) => id),
    asks: Object.fromEntries(answers.map(({ id, decision: asked = '' }) => [id, asked])),
    ...(decision.kind === 'verdict' ? verdict(decision) : choice(decision, rulebook)),
    rules,
  };
}

type Answers = Pick<BundledDecision, 'outcomes' | 'outcome' | 'possible' | 'settled'>;

const isCertain = ({ id }: Rule): Logic => ({ in: [id, variable('certain')] });
const isOpen = ({ id }: Rule): Logic => ({ in: [id, variable('open')] });
const mayApply = (rule: Rule): Logic => or([isCertain(rule), isOpen(rule)]);

function verdict({ outcomes, otherwise, rules }: Verdict): Answers {
  const giving = (outcome: string) => rules.filter((rule) => rule.outcome === outcome);
  const silent = and(rules.map((rule) => not(isCertain(rule))));
  const possible = outcomes.map((outcome, rank) => {
    const stricter = outcomes.slice(rank + 1).flatMap(giving);
    const speaks = or([...giving(outcome).map(mayApply), ...(outcome === otherwise ? [silent] : [])]);
    return { outcome, holds: and([speaks, ...stricter.map((rule) => not(isCertain(rule)))]) };
  });
  return {
    outcomes,
    outcome: firstOf([...possible].reverse(), otherwise),
    possible: listOf(possible),
    settled: { '===': [{ '+': [0, ...possible.map(({ holds }): Logic => ({ if: [holds, 1, 0] }))] }, 1] },
  };
}

function choice(decision: Choice, rulebook: Rulebook): Answers {
  const { rules } = decision;
  const speaking = rules.filter(({ addsOnly }) => !addsOnly);
  const programs = programsOf(decision, rulebook).map(({ id, facts }) => {
    const stated = knownFacts(rulebook, facts);
    const lacking = rules.filter((rule) => truthOf(needsOf(rule), stated) !== true);
    return {
      outcome: id,
      meets: and([or(speaking.map(isCertain)), ...lacking.map((rule) => not(mayApply(rule)))]),
      holds: and([or(speaking.map(mayApply)), ...lacking.map((rule) => not(isCertain(rule)))]),
    };
  });
  const none = and(programs.map(({ meets }) => not(meets)));
  return {
    outcomes: [...programs.map(({ outcome }) => outcome), 'none'],
    outcome: firstOf(
      programs.map(({ outcome, meets }) => ({ outcome, holds: meets })),
      'none',
    ),
    possible: listOf([...programs, { outcome: 'none', holds: none }]),
    settled: and(programs.map(({ meets, holds }) => or([meets, not(holds)]))),
  };
}

function firstOf(options: readonly { outcome: string; holds: Logic }[], otherwise: string): Logic {
  return { if: [...options.flatMap(({ outcome, holds }) => [holds, outcome]), otherwise] };
}

function listOf(options: readonly { outcome: string; holds: Logic }[]): Logic {
  return { merge: options.map(({ outcome, holds }): Logic => ({ if: [holds, [outcome], []] })) };
}

/** The answer to a situation as every emitted evaluator must give it. */
export function vectorOf(rulebook: Rulebook, decision: string, situation: Situation): Vector {
  const { outcome, possible, settled } = decide(rulebook, decision, situation);
  const known = knownFacts(rulebook, situation);
  const truths = (rulebook.decisions.get(decision)?.rules ?? []).map((rule) => ({
    id: rule.id,
    truth: truthOf(rule.when, known),
  }));
  const ids = (wanted: boolean | undefined) => truths.flatMap(({ id, truth }) => (truth === wanted ? [id] : []));
  return {
    decision,
    facts: situationToContract(situation, rulebook.facts),
    outcome,
    possible,
    settled,
    certain: ids(true),
    open: ids(undefined),
  };
}

/** Most vectors of one decision that a file carries. */
const mostVectors = 30;
/** Most situations that these are chosen from. */
const mostCandidates = 600;

/** Of the representatives of a decision, some that together show each rule true, unknown and false, and each outcome; then others. */
function vectorsOf(rulebook: Rulebook, decision: string): Vector[] {
  const { situations } = representativesOf(rulebook, decision, { cells: 5000, combinations: mostCandidates });
  const vectors = spread(situations, mostCandidates).map((situation) => vectorOf(rulebook, decision, situation));
  const shown = new Set<string>();
  const rules = rulebook.decisions.get(decision)?.rules ?? [];
  const needed = vectors.filter((vector) => {
    const shows = [
      `outcome ${vector.outcome} ${vector.settled}`,
      ...rules.map(({ id }) => `${id} ${vector.certain.includes(id) ? 'true' : vector.open.includes(id) ? 'open' : 'false'}`),
    ].filter((each) => !shown.has(each));
    for (const each of shows) shown.add(each);
    return shows.length > 0;
  });
  const others = spread(
    vectors.filter((each) => !needed.includes(each)),
    Math.max(0, mostVectors - needed.length),
  );
  return [...needed, ...others];
}

/** At most so many of a list, evenly from all of it. */
function spread<T>(list: readonly T[], most: number): T[] {
  if (list.length <= most) return [...list];
  return Array.from({ length: most }, (_, index) => list[Math.floor((index * list.length) / most)]).filter(
    (each) => each !== undefined,
  );
}
