import { isDeepStrictEqual } from 'node:util';
import { canonicalJson } from '../decide/canonical-json.js';
import { type Answering, decide } from '../decide/decide.js';
import type { Decision, Fact, Rule, Rulebook, Situation } from '../link/rulebook.js';
import { dimensionOf } from '../measure/quantity.js';
import type { Circuit } from './circuit.js';
import { type Encoded, Encoder, testsOfDecision } from './encode.js';
import { meaningOf } from './meaning.js';
import { testsOf } from './pieces.js';
import { type Effort, regionsOf, usualEffort, whereAllIsStated } from './regions.js';
import { type SaidFact, sayBox } from './say-box.js';
import { shareOf } from './share.js';
import type { Literal } from './solver.js';
import { type Box, holdTo, literalsOf, type Space, situationIn, spaceOf } from './space.js';

/** What a change from one rulebook to another does to the answers. */
export interface Impact {
  decisions: DecisionImpact[];
}

export interface DecisionImpact {
  decision: string;
  title: string;
  /**
   * `same`: it is proved that no answer changes. `changed`: all that changes is listed. `not decided`: what is listed changes, and
   * the search was given up before it was known whether more does. `many`: more regions change than are listed.
   */
  verdict: 'same' | 'changed' | 'many' | 'not decided' | 'new' | 'gone';
  changes: AnswerChange[];
  open?: OpenChange;
  /** Share of all situations whose outcome changes, from 0 to 1; absent where it was not counted. */
  share?: number;
  /** Rules that were added, retired, or say when they apply in another way, whether or not an answer changes. */
  rules: { rule: string; what: 'new' | 'retired' | 'condition' | 'outcome' | 'needs' | 'words' }[];
  /** Limits with another value that its rules compare with. */
  limits: { limit: string; before: string; after: string }[];
  /** Facts that are of another type in the two rulebooks, so that their situations cannot be compared. */
  clashes: string[];
  /** Decisions whose answers it looks at and that change themselves. */
  through: string[];
}

/** One change of the outcome, in all regions of situations in which everything is stated. */
export interface AnswerChange {
  before: string;
  after: string;
  regions: ChangedRegion[];
}

/** Changes that are seen only while facts are missing: of the outcome, or of what is still possible. Examples, and whether there are more. */
export interface OpenChange {
  regions: ChangedRegion[];
  more: boolean;
}

export interface ChangedRegion {
  /** The region in words, a line a fact. */
  where: SaidFact[];
  /** A situation in it. */
  situation: Situation;
  outcome: { before: string; after: string };
  /** What is possible there before and after. */
  possible: { before: string[]; after: string[] };
  /** The rules that give the outcome in this situation; none where no rule speaks. */
  rules: { before: string[]; after: string[] };
}

/** What the comparison looks at of a rulebook. */
export type Compared = Answering & Pick<Rulebook, 'terms' | 'limits'>;

/** Compares two rulebooks, decision by decision, over all situations; exact, or said to be not decided. */
export function impactOf(before: Compared, after: Compared, effort: Effort = usualEffort): Impact {
  const ids = [...new Set([...before.decisions.keys(), ...after.decisions.keys()])];
  const decisions = ids.map((id) => compareDecision(id, before, after, effort));
  const changed = new Set(decisions.filter(({ verdict }) => verdict !== 'same').map(({ decision }) => decision));
  return {
    decisions: decisions.map((each) => ({ ...each, through: lookedAt(each.decision, after).filter((id) => changed.has(id)) })),
  };
}

/** The decisions whose answers a decision looks at by itself. */
function lookedAt(id: string, { decisions, facts }: Compared): string[] {
  const tests = testsOf(decisions.get(id)?.rules.map(({ when }) => when) ?? [], facts);
  return [...new Set(tests.flatMap(({ fact }) => facts.get(fact)?.decision ?? []))];
}

function compareDecision(id: string, before: Compared, after: Compared, effort: Effort): DecisionImpact {
  const [old, next] = [before.decisions.get(id), after.decisions.get(id)];
  const head = {
    decision: id,
    title: next?.title ?? old?.title ?? id,
    changes: [],
    rules: [],
    limits: [],
    clashes: [],
    through: [],
  };
  if (old === undefined) return { ...head, verdict: 'new' };
  if (next === undefined) return { ...head, verdict: 'gone' };
  const clashes = clashingFacts(id, before, after);
  if (clashes.length > 0) return { ...head, verdict: 'not decided', clashes };
  const compared = { ...head, rules: changedRules(old, next), limits: changedLimits(id, before, after) };
  if (isDeepStrictEqual(meaningOf(id, before), meaningOf(id, after))) return { ...compared, verdict: 'same' };
  const space = spaceOf([...testsOfDecision(before, id), ...testsOfDecision(after, id)], [before.facts, after.facts]);
  holdTo([...Object.keys(before.clinic.facts), ...Object.keys(after.clinic.facts)], space);
  const { circuit } = space;
  const [was, is] = [new Encoder(space, before).decision(id), new Encoder(space, after).decision(id)];
  const possibleOf = (encoded: Encoded, answer: string) => encoded.possible.get(answer) ?? circuit.never;
  const answers = [...new Set([...was.possible.keys(), ...is.possible.keys()])];
  const samePossible = circuit.and(answers.map((each) => circuit.same(possibleOf(was, each), possibleOf(is, each))));
  const pairs = outcomePairs(was, is, circuit);
  const sameOutcome = circuit.and(pairs.map(({ formula }) => -formula));
  const differs = -circuit.and([sameOutcome, samePossible]);
  // Mostly nothing changes, and one question says so.
  if (circuit.solver.solve([differs], effort.conflicts) === false) return { ...compared, verdict: 'same' };
  const stated = whereAllIsStated(space);
  const region = (box: Box) => regionIn(box, space, id, before, after);
  const changes: AnswerChange[] = [];
  const boxes: Box[] = [];
  let [givenUp, many] = [false, false];
  for (const { formula, ...pair } of pairs) {
    // Where very much changes, each kind of change still has its examples.
    const regions = Math.max(fewRegions, Math.min(effort.regions, 4 * effort.regions - boxes.length));
    const found = regionsOf(space, formula, { ...effort, regions }, stated);
    givenUp ||= found.givenUp;
    many ||= !found.complete;
    if (found.boxes.length === 0) continue;
    boxes.push(...found.boxes);
    changes.push({ ...pair, regions: found.boxes.map(region) });
  }
  const share = many ? undefined : shareOf(boxes, space);
  // What changes only while facts are missing follows from the rest, and a few examples say enough.
  const somethingMissing = circuit.or(stated.map((each) => -each));
  const open: OpenChange = { regions: [], more: false };
  for (const formula of [circuit.and([-sameOutcome, somethingMissing]), circuit.and([sameOutcome, -samePossible])]) {
    const outside = boxes.map((box) => circuit.or(literalsOf(box).map((each) => -each)));
    const found = regionsOf(space, circuit.and([formula, ...outside]), { ...effort, regions: fewRegions });
    givenUp ||= found.givenUp;
    open.regions.push(...found.boxes.map(region));
    open.more ||= !found.complete;
  }
  const isSame = changes.length === 0 && open.regions.length === 0;
  return {
    ...compared,
    verdict: givenUp ? 'not decided' : many ? 'many' : isSame ? 'same' : 'changed',
    changes,
    ...(open.regions.length > 0 && { open }),
    ...(share !== undefined && !isSame && { share }),
  };
}

/** How many examples are shown of what changes only while facts are missing, and of each change once there are very many. */
const fewRegions = 2;

function clashingFacts(id: string, before: Compared, after: Compared): string[] {
  const read = [before, after].flatMap((rulebook) => testsOfDecision(rulebook, id).map(({ fact }) => fact));
  const kindOf = (fact: Fact) => `${fact.type} ${fact.unit === undefined ? '' : dimensionOf({ value: 0, unit: fact.unit })}`;
  return [...new Set(read)].filter((fact) => {
    const [was, is] = [before.facts.get(fact), after.facts.get(fact)];
    return was !== undefined && is !== undefined && kindOf(was) !== kindOf(is);
  });
}

function outcomePairs(was: Encoded, is: Encoded, circuit: Circuit): { before: string; after: string; formula: Literal }[] {
  const outcomes = [...new Set([...was.outcome.keys(), ...is.outcome.keys()])];
  return [...was.outcome].flatMap(([before, held]) =>
    outcomes.flatMap((after) =>
      after === before ? [] : [{ before, after, formula: circuit.and([held, is.outcome.get(after) ?? circuit.never]) }],
    ),
  );
}

function regionIn(box: Box, space: Space, decision: string, before: Compared, after: Compared): ChangedRegion {
  const situation = situationIn(box, space);
  const answers = [before, after].map((rulebook) => decide(rulebook, decision, situation));
  const [was, is] = answers;
  const giving = (answer: typeof was) =>
    (answer?.reasons ?? []).flatMap(({ rule, outcome }) =>
      rule !== undefined && (outcome === undefined || outcome === answer?.outcome) ? [rule] : [],
    );
  return {
    where: sayBox(box, space, [after.terms, before.terms]),
    situation,
    outcome: { before: was?.outcome ?? '', after: is?.outcome ?? '' },
    possible: { before: was?.possible ?? [], after: is?.possible ?? [] },
    rules: { before: giving(was), after: giving(is) },
  };
}

function changedRules(before: Decision, after: Decision): DecisionImpact['rules'] {
  const old = new Map(before.rules.map((rule) => [rule.name, rule]));
  const kept = new Set(after.rules.map(({ name }) => name));
  return [
    ...after.rules.flatMap((rule): DecisionImpact['rules'] => {
      const was = old.get(rule.name);
      if (was === undefined) return [{ rule: rule.id, what: 'new' }];
      const what = (['when', 'outcome', 'needs'] as const).find((key) => differs(was, rule, key));
      if (what !== undefined) return [{ rule: rule.id, what: what === 'when' ? 'condition' : what }];
      const isReworded = (['because', 'instead', 'cautions', 'source'] as const).some((key) => differs(was, rule, key));
      return isReworded ? [{ rule: rule.id, what: 'words' }] : [];
    }),
    ...before.rules.flatMap((rule): DecisionImpact['rules'] => (kept.has(rule.name) ? [] : [{ rule: rule.id, what: 'retired' }])),
  ];
}

function differs(was: Rule, is: Rule, key: keyof Rule): boolean {
  if (isDeepStrictEqual(was[key], is[key])) return false;
  return canonicalJson(withoutLimits(was[key])) !== canonicalJson(withoutLimits(is[key]));
}

/** Another value of a limit is no other condition. */
function withoutLimits(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(withoutLimits);
  if (typeof value !== 'object' || value === null) return value;
  const entries = Object.entries(value).filter(([key]) => !('limit' in value) || (key !== 'value' && key !== 'shown'));
  return Object.fromEntries(entries.map(([key, each]: [string, unknown]) => [key, withoutLimits(each)]));
}

function changedLimits(decision: string, before: Compared, after: Compared): DecisionImpact['limits'] {
  if (before.limits === after.limits) return [];
  const ids = [before, after].flatMap((rulebook) =>
    testsOfDecision(rulebook, decision).flatMap(({ test }) => (test.kind === 'compare' ? (test.limit ?? []) : [])),
  );
  return [...new Set(ids)].flatMap((limit) => {
    const [was, is] = [before, after].map((rulebook) => rulebook.limits.get(limit)?.chain.at(-1)?.value);
    return was === undefined || is === undefined || was === is ? [] : [{ limit, before: was, after: is }];
  });
}
