import { compareByPreference, programsOf } from '../decide/decide.js';
import type { Condition, Decision, Rule, Rulebook, Situation } from '../link/rulebook.js';
import { type Encoded, Encoder, testsOfDecision } from './encode.js';
import { type Effort, regionsOf, usualEffort, whereAllIsStated } from './regions.js';
import { type SaidFact, sayBox } from './say-box.js';
import { shareOf } from './share.js';
import type { Literal } from './solver.js';
import { type Box, holdTo, type Space, situationIn, spaceOf } from './space.js';

/** What an exact look at one decision shows. */
export interface Analysis {
  decision: string;
  title: string;
  rules: number;
  /** Facts it looks at, those of the decisions it asks among them. */
  facts: number;
  /** Where no rule speaks, although every fact is stated: regions that the rules do not mark as intended. */
  gaps: Region[];
  /** Share of all situations in which no rule speaks, from 0 to 1: without those intended, and of those. */
  share: { gaps?: number; intended?: number };
  /** Marks of intended gaps, by index, that no situation is in even without the rules of later layers. */
  idleMarks: number[];
  /** Rules that no situation makes true: their condition contradicts itself, or what the clinic states. */
  neverTrue: string[];
  /** Rules that are never the reason for the outcome: wherever they are true, a more restrictive one is too. */
  overruled: string[];
  /** Rules that hold in the very same situations as an earlier one and say the same. */
  repeats: { rule: string; of: string }[];
  /** Of a choice: programs that may both come first, where the rules rank neither. */
  ties: { programs: [string, string]; where: SaidFact[]; situation: Situation }[];
  /** What could not be decided within the limit of the search. */
  undecided: string[];
}

/** A region in words, with a situation in it. */
export interface Region {
  where: SaidFact[];
  situation: Situation;
}

/** Looks at each decision of a rulebook: gaps, rules without effect, ties. Held to what its clinic states about itself. */
export function analyse(rulebook: Rulebook, effort: Effort = usualEffort): Analysis[] {
  return [...rulebook.decisions.values()].map((decision) => analyseDecision(decision, rulebook, effort));
}

/** Looks at one decision. */
export function analyseDecision(decision: Decision, rulebook: Rulebook, effort: Effort = usualEffort): Analysis {
  const marks = decision.gaps.map(({ when }) => when ?? always);
  const space = spaceOf(testsOfDecision(rulebook, decision.id, marks), [rulebook.facts]);
  holdTo(Object.keys(rulebook.clinic.facts), space);
  const encoder = new Encoder(space, rulebook);
  const encoded = encoder.decision(decision.id);
  const marked = marks.map((each) => encoder.condition(each).certain);
  const undecided: string[] = [];
  /** Whether a formula can be true; what is not decided counts as if it could. */
  const canBe: CanBe = (formula, what, among = []) => {
    const found = space.circuit.solver.solve([formula, ...among], effort.conflicts);
    if (found === undefined) undecided.push(what);
    return found !== false;
  };
  return {
    decision: decision.id,
    title: decision.title,
    rules: decision.rules.length,
    facts: space.dimensions.size,
    ...findGaps(space, decision, encoded, marked, rulebook, effort, undecided, canBe),
    ...findIdle(space, decision, encoded, canBe),
    ties: findTies(space, decision, encoded, rulebook, effort, undecided),
    undecided,
  };
}

/** Whether a formula can be true, among the situations that some literals say; `what` is written down where it is not decided. */
type CanBe = (formula: Literal, what: string, among?: readonly Literal[]) => boolean;

const always: Condition = { kind: 'all', of: [] };

function findGaps(
  space: Space,
  decision: Decision,
  { rules }: Encoded,
  marked: readonly Literal[],
  rulebook: Rulebook,
  effort: Effort,
  undecided: string[],
  canBe: CanBe,
): Pick<Analysis, 'gaps' | 'share' | 'idleMarks'> {
  const { circuit } = space;
  const silent = circuit.and(rules.map(({ possible }) => -possible));
  const stated = whereAllIsStated(space);
  const regions = (formula: Literal, what: string): { boxes: Box[]; share?: number } => {
    const { boxes, complete, givenUp } = regionsOf(space, formula, effort, stated);
    if (givenUp) undecided.push(what);
    const share = complete ? shareOf(boxes, space) : undefined;
    return { boxes, ...(share !== undefined && { share }) };
  };
  const gaps = regions(circuit.and([silent, ...marked.map((each) => -each)]), 'gaps');
  const intended = marked.length === 0 ? { boxes: [] } : regions(circuit.and([silent, circuit.or(marked)]), 'intended gaps');
  return {
    gaps: gaps.boxes.map((box) => ({ where: sayBox(box, space, [rulebook.terms]), situation: situationIn(box, space) })),
    share: {
      ...(gaps.share !== undefined && { gaps: gaps.share }),
      ...(intended.share !== undefined && { intended: intended.share }),
    },
    // A mark belongs to its layer: a later layer may well have closed the gap.
    idleMarks: marked.flatMap((each, index) => {
      const layer = decision.gaps[index]?.layer;
      const silentThere = rules.flatMap(({ rule, possible }) => (rule.layer === layer ? [-possible] : []));
      return canBe(circuit.and([...silentThere, each]), `whether there is the marked gap ${index + 1}`, stated) ? [] : [index];
    }),
  };
}

function findIdle(
  { circuit }: Space,
  decision: Decision,
  { rules, outcome }: Encoded,
  canBe: CanBe,
): Pick<Analysis, 'neverTrue' | 'overruled' | 'repeats'> {
  const { solver } = circuit;
  const seen = rules.map(({ rule, certain, possible }) => ({
    rule,
    certain,
    possible,
    gives: circuit.and([certain, outcome.get(rule.outcome ?? '') ?? circuit.never]),
    wasTrue: false,
    hasGiven: false,
    /** Whether it was true, open or false in each situation found. */
    in: '',
  }));
  /** Asks; a situation that is found says something about every rule, which is then not asked. */
  const ask = (formula: Literal, what: string): boolean => {
    const before = solver.found;
    const can = canBe(formula, what);
    if (solver.found > before)
      for (const each of seen) {
        const isTrue = solver.isTrue(each.certain);
        each.wasTrue ||= isTrue;
        each.hasGiven ||= solver.isTrue(each.gives);
        each.in += isTrue ? 't' : solver.isTrue(each.possible) ? 'o' : 'f';
      }
    return can;
  };
  const isAlive = (each: (typeof seen)[number]) => each.wasTrue || ask(each.certain, `whether \`${each.rule.id}\` is ever true`);
  const alive = seen.filter(isAlive);
  const living = new Set(alive);
  const overruled =
    decision.kind === 'choice'
      ? []
      : alive.filter((each) => !each.hasGiven && !ask(each.gives, `whether \`${each.rule.id}\` ever gives the outcome`));
  const repeats: Analysis['repeats'] = [];
  const bySaying = new Map<string, typeof seen>();
  for (const each of alive) {
    const key = says(each.rule);
    const earlier = bySaying.get(key) ?? [];
    const first = earlier.find(
      (other) =>
        other.in === each.in &&
        !ask(
          circuit.or([-circuit.same(other.certain, each.certain), -circuit.same(other.possible, each.possible)]),
          `whether \`${each.rule.id}\` repeats \`${other.rule.id}\``,
        ),
    );
    if (first !== undefined) repeats.push({ rule: each.rule.id, of: first.rule.id });
    earlier.push(each);
    bySaying.set(key, earlier);
  }
  const ids = (list: typeof seen) => list.map(({ rule }) => rule.id);
  return { neverTrue: ids(seen.filter((each) => !living.has(each))), overruled: ids(overruled), repeats };
}

/** What a rule says where it applies, without its words. */
function says({ outcome, needs, addsOnly }: Rule): string {
  return JSON.stringify([outcome, needs, addsOnly]);
}

function findTies(
  space: Space,
  decision: Decision,
  { outcome, possible }: Encoded,
  rulebook: Rulebook,
  effort: Effort,
  undecided: string[],
): Analysis['ties'] {
  if (decision.kind !== 'choice') return [];
  const { circuit } = space;
  const programs = programsOf(decision, rulebook);
  return programs.flatMap((program, index) =>
    programs.slice(index + 1).flatMap((other): Analysis['ties'] => {
      if (compareByPreference(decision, program, other) !== 0) return [];
      const both = circuit.and([outcome.get(program.id) ?? circuit.never, possible.get(other.id) ?? circuit.never]);
      const { boxes, givenUp } = regionsOf(space, both, { ...effort, regions: 1 }, whereAllIsStated(space));
      if (givenUp) undecided.push(`whether \`${program.id}\` and \`${other.id}\` tie`);
      return boxes.map((box) => ({
        programs: [program.id, other.id],
        where: sayBox(box, space, [rulebook.terms]),
        situation: situationIn(box, space),
      }));
    }),
  );
}
