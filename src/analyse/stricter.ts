import type { Answering } from '../decide/decide.js';
import { needsOf } from '../decide/decide.js';
import type { Choice, Decision, Fact, Situation } from '../link/rulebook.js';
import { Encoder, testsOfDecision } from './encode.js';
import { type FactTest, testsOf } from './pieces.js';
import { type Effort, regionsOf, usualEffort, whereAllIsStated } from './regions.js';
import type { Literal } from './solver.js';
import { type Box, type Space, situationIn, spaceOf, withProgram } from './space.js';

/** Where one rulebook answers less strictly than another: a situation, the region around it, and both answers. */
export interface Looser {
  space: Space;
  box: Box;
  /** The facts of a situation there. */
  situation: Situation;
  /** Of a choice: the facts of a program that is offered there and was not. */
  program?: Situation;
  before: string;
  after: string;
}

/**
 * Whether `after` answers a decision at least as strictly as `before` in every situation, also where facts are missing: an outcome
 * as restrictive or more, and of a choice no program that was not offered, whatever programs there are.
 *
 * @returns `undefined` when that is proved, the loosened region otherwise, and `not decided` when the search was given up
 */
export function looserIn(
  decision: string,
  before: Answering,
  after: Answering,
  effort: Effort = { ...usualEffort, regions: 1 },
): Looser | 'not decided' | undefined {
  const [old, next] = [before.decisions.get(decision), after.decisions.get(decision)];
  if (old === undefined || next === undefined) return undefined;
  const space = spaceOf([...testsOfDecision(before, decision), ...testsOfDecision(after, decision)], [before.facts, after.facts]);
  if (old.kind === 'choice' && next.kind === 'choice') return offersMore(old, next, before, after, space, effort);
  if (old.kind !== 'verdict' || next.kind !== 'verdict') return undefined;
  const was = new Encoder(space, before).decision(decision);
  const is = new Encoder(space, after).decision(decision);
  const rank = (outcome: string) => next.outcomes.indexOf(outcome);
  const loosened = [...was.outcome].flatMap(([outcome, held]) =>
    [...is.outcome].flatMap(([other, holds]) =>
      rank(other) < rank(outcome) ? [{ outcome, other, formula: space.circuit.and([held, holds]) }] : [],
    ),
  );
  // Mostly there is none, and one question says so.
  const any = space.circuit.or(loosened.map(({ formula }) => formula));
  if (space.circuit.solver.solve([any], effort.conflicts) === false) return undefined;
  for (const { outcome, other, formula } of loosened) {
    const found = firstRegion(space, formula, effort);
    if (found === 'not decided') return found;
    if (found !== undefined) return { space, box: found, situation: situationIn(found, space), before: outcome, after: other };
  }
  return undefined;
}

function offersMore(
  old: Choice,
  next: Choice,
  before: Answering,
  after: Answering,
  situations: Space,
  effort: Effort,
): Looser | 'not decided' | undefined {
  const programs = spaceOf(
    [...needsTests(old, before), ...needsTests(next, after)],
    [before.facts, after.facts],
    situations.circuit,
  );
  const space = withProgram(situations, programs);
  const { circuit } = space;
  const meets = (choice: Choice, rulebook: Answering): Literal => {
    const { rules } = new Encoder(situations, rulebook).decision(choice.id);
    const ofProgram = new Encoder(programs, rulebook);
    const speaks = circuit.or(rules.filter(({ rule }) => !rule.addsOnly).map(({ certain }) => certain));
    return circuit.and([
      speaks,
      ...rules.map(({ rule, possible }) => circuit.or([-possible, ofProgram.condition(needsOf(rule)).certain])),
    ]);
  };
  const found = firstRegion(space, circuit.and([meets(next, after), -meets(old, before)]), effort);
  if (found === undefined || found === 'not decided') return found;
  const said = situationIn(found, space);
  const part = (isProgram: boolean) =>
    Object.fromEntries(
      Object.entries(said).flatMap(([id, value]) =>
        id.startsWith('program ') === isProgram ? [[id.replace(/^program /, ''), value]] : [],
      ),
    );
  return { space, box: found, situation: part(false), program: part(true), before: 'not offered', after: 'offered' };
}

function needsTests(choice: Choice, { facts }: { facts: ReadonlyMap<string, Fact> }): FactTest[] {
  return testsOf(choice.rules.map(needsOf), facts);
}

function firstRegion(space: Space, formula: Literal, effort: Effort): Box | 'not decided' | undefined {
  // A situation in which everything is stated says more than one in which something is missing.
  for (const among of [whereAllIsStated(space), []]) {
    const { boxes, givenUp } = regionsOf(space, formula, effort, among);
    if (boxes[0] !== undefined) return boxes[0];
    if (givenUp) return 'not decided';
  }
  return undefined;
}

/** The same rulebook with another version of one decision. */
export function withDecision<R extends Answering>(rulebook: R, decision: Decision): R {
  return { ...rulebook, decisions: new Map(rulebook.decisions).set(decision.id, decision) };
}
