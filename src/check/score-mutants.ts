import { Encoder, testsOfDecision } from '../analyse/encode.js';
import { regionsOf, usualEffort, whereAllIsStated } from '../analyse/regions.js';
import { holdTo, situationIn, spaceOf } from '../analyse/space.js';
import { looserIn, withDecision } from '../analyse/stricter.js';
import { decide, knownFacts } from '../decide/decide.js';
import { truthOf } from '../decide/truth.js';
import { isFor } from '../link/choose-packs.js';
import type { Fact, Rulebook, Situation } from '../link/rulebook.js';
import type { Located } from '../read/read-documents.js';
import type { FixtureDocument } from '../read/types.gen.js';
import { type Fixture, FixtureError } from './fixture-parts.js';
import { type Mutant, mutantsOf } from './mutants.js';
import { proveBoundary, proveProgram, proveSituation } from './prove-answer.js';

/** How many deliberate mistakes in one rule its examples and the published values notice. */
export interface RuleScore {
  rule: string;
  mutants: number;
  noticed: number;
  /** Mistakes of which it is proved that they change nothing. */
  harmless: number;
  unnoticed: UnnoticedMutant[];
}

export interface UnnoticedMutant {
  what: string;
  /** What would notice it, for a person to accept; absent where nothing that can be written would. */
  draft?: Draft;
}

/** A proof that somebody may put into the rules, after reading it. Situations are in base units. */
export type Draft =
  | { kind: 'example'; rule: string; given: Situation; applies: boolean }
  | { kind: 'situation'; decision: string; given: Situation; outcome: string }
  | {
      kind: 'boundary';
      decision: string;
      fact: string;
      threshold: number;
      given: Situation;
      below: string;
      at: string;
      above: string;
    };

/**
 * Makes every mistake in every rule of a decision by itself, and looks whether an example of the rule or a published value of this or a
 * dependent decision notices. For those that nothing notices, a draft of what would.
 */
export function scoreMutants(rulebook: Rulebook, decision: string, documents: readonly Located<FixtureDocument>[]): RuleScore[] {
  const found = rulebook.decisions.get(decision);
  if (found === undefined) throw new RangeError(`no decision \`${decision}\``);
  const bare: Rulebook = { ...rulebook, clinic: { ...rulebook.clinic, facts: {} } };
  const fixtures = fixturesOn(bare, decision, documents);
  const scores = new Map(
    found.rules.map(({ id }): [string, RuleScore] => [id, { rule: id, mutants: 0, noticed: 0, harmless: 0, unnoticed: [] }]),
  );
  for (const mutant of mutantsOf(found)) {
    const score = scores.get(mutant.rule.id);
    if (score === undefined) continue;
    score.mutants += 1;
    if (isNoticed(mutant, bare, fixtures)) score.noticed += 1;
    else if (isHarmless(mutant, bare)) score.harmless += 1;
    else {
      const draft = draftFor(mutant, bare);
      score.unnoticed.push({ what: mutant.what, ...(draft !== undefined && { draft }) });
    }
  }
  return [...scores.values()];
}

/** The published values that ask a decision, or one that looks at its answer, and hold as the rules are. */
function fixturesOn(rulebook: Rulebook, decision: string, documents: readonly Located<FixtureDocument>[]): Fixture[] {
  const asking = new Set([decision]);
  for (const id of rulebook.decisions.keys()) {
    const looked = testsOfDecision(rulebook, id).map(({ fact }) => rulebook.facts.get(fact)?.decision);
    if (looked.includes(decision)) asking.add(id);
  }
  return documents
    .filter(({ data }) => isFor(data.region, rulebook.clinic.region))
    .flatMap(({ data }) => Object.values(data.fixtures))
    .filter((fixture) => 'decision' in fixture && asking.has(fixture.decision) && holds(fixture, rulebook));
}

function holds(fixture: Fixture, rulebook: Rulebook): boolean {
  try {
    switch (fixture.prove) {
      case 'situation':
        return proveSituation(fixture, rulebook, new Set()) === undefined;
      case 'boundary':
        return proveBoundary(fixture, rulebook, new Set()) === undefined;
      case 'program':
        return proveProgram(fixture, rulebook, new Set()) === undefined;
      default:
        return false;
    }
  } catch (error) {
    if (error instanceof FixtureError) return false;
    throw error;
  }
}

function isNoticed({ rule, mutated, kind, decision }: Mutant, rulebook: Rulebook, fixtures: readonly Fixture[]): boolean {
  const byExample =
    (kind === 'bound' || kind === 'condition') &&
    rule.examples.some(({ given }) => {
      const known = knownFacts(rulebook, given);
      return truthOf(rule.when, known) !== truthOf(mutated.when, known);
    });
  if (byExample) return true;
  const wrong = withDecision(rulebook, decision);
  return fixtures.some((fixture) => !holds(fixture, wrong));
}

/** Whether it is proved that a mistake changes nothing. */
function isHarmless({ rule, mutated, kind, decision }: Mutant, rulebook: Rulebook): boolean {
  const wrong = withDecision(rulebook, decision);
  if (kind === 'outcome' || kind === 'need')
    return looserIn(decision.id, rulebook, wrong) === undefined && looserIn(decision.id, wrong, rulebook) === undefined;
  const space = spaceOf(testsOfDecision(rulebook, decision.id, [mutated.when]), [rulebook.facts]);
  const encoder = new Encoder(space, rulebook);
  const [was, is] = [encoder.condition(rule.when), encoder.condition(mutated.when)];
  const { circuit } = space;
  const differs = circuit.or([-circuit.same(was.certain, is.certain), -circuit.same(was.possible, is.possible)]);
  return circuit.solver.solve([differs], usualEffort.conflicts) === false;
}

function draftFor(mutant: Mutant, rulebook: Rulebook): Draft | undefined {
  if (mutant.kind === 'need') return undefined;
  return mutant.kind === 'outcome' ? draftSituation(mutant, rulebook) : draftExample(mutant, rulebook);
}

/** A situation in which the rule is certain and gives the outcome, so that another outcome would be another answer. */
function draftSituation({ rule, decision }: Mutant, rulebook: Rulebook): Draft | undefined {
  const space = spaceOf(testsOfDecision(rulebook, decision.id), [rulebook.facts]);
  holdTo([], space);
  const encoded = new Encoder(space, rulebook).decision(decision.id);
  const { circuit } = space;
  const others = encoded.rules.filter((each) => each.rule !== undefined && each.rule.id !== rule.id);
  const own = encoded.rules.find((each) => each.rule.id === rule.id);
  if (own === undefined) return undefined;
  const alone = circuit.and([own.certain, ...others.map(({ possible }) => -possible)]);
  const gives = circuit.and([own.certain, encoded.outcome.get(rule.outcome ?? '') ?? circuit.never]);
  for (const formula of [alone, gives]) {
    const [box] = regionsOf(space, formula, { ...usualEffort, regions: 1 }, whereAllIsStated(space)).boxes;
    if (box !== undefined)
      return { kind: 'situation', decision: decision.id, given: situationIn(box, space), outcome: rule.outcome ?? '' };
  }
  return undefined;
}

/** A situation in which the rule is true and the mutated one false, or the other way round; at a bound, with both sides of it. */
function draftExample({ rule, mutated, kind, fact: id, decision }: Mutant, rulebook: Rulebook): Draft | undefined {
  const space = spaceOf(testsOfDecision(rulebook, decision.id, [mutated.when]), [rulebook.facts]);
  const encoder = new Encoder(space, rulebook);
  const [was, is] = [encoder.condition(rule.when), encoder.condition(mutated.when)];
  const { circuit } = space;
  const parts = circuit.or([circuit.and([was.certain, -is.possible]), circuit.and([-was.possible, is.certain])]);
  const [box] = regionsOf(space, parts, { ...usualEffort, regions: 1 }, whereAllIsStated(space)).boxes;
  if (box === undefined) return undefined;
  const given = situationIn(box, space);
  const fact = rulebook.facts.get(id ?? '');
  return (
    (kind === 'bound' && fact !== undefined ? draftBoundary(decision.id, fact, given, rulebook) : undefined) ?? {
      kind: 'example',
      rule: rule.id,
      given,
      applies: truthOf(rule.when, knownFacts(rulebook, given)) === true,
    }
  );
}

/** The answers on both sides of a bound and at it, when they differ. */
function draftBoundary(decision: string, fact: Fact, at: Situation, rulebook: Rulebook): Draft | undefined {
  const { [fact.id]: threshold, ...given } = at;
  if (typeof threshold !== 'number') return undefined;
  const step = fact.type === 'quantity' ? Math.max(Math.abs(threshold) * 1e-6, 1e-9) : 1;
  const outcome = (value: number) => decide(rulebook, decision, { ...given, [fact.id]: value }).outcome;
  const [below, here, above] = [threshold - step, threshold, threshold + step].map(outcome);
  if (below === undefined || here === undefined || above === undefined || (below === here && here === above)) return undefined;
  return { kind: 'boundary', decision, fact: fact.id, threshold, given, below, at: here, above };
}
