import type { Answer } from '../decide/answer.js';
import { decide } from '../decide/decide.js';
import { readFactValue } from '../link/read-values.js';
import type { Choice, Decision, Fact, Program, Rulebook, Situation, Verdict } from '../link/rulebook.js';
import { quotedList } from '../read/quoted.js';
import { FixtureError, type FixtureThat, known, readGiven, type Wrong } from './fixture-parts.js';

/** Answers a situation and compares the outcome of a verdict with the published one. */
export function proveSituation(fixture: FixtureThat<'situation'>, rulebook: Rulebook, reached: Set<string>): Wrong | undefined {
  const decision = known('E306', 'decision', fixture.decision, rulebook.decisions, ['decision']);
  if (decision.kind === 'choice') {
    const message = `\`${decision.id}\` is a choice among a clinic's own programs`;
    return { code: 'E402', at: ['decision'], message, help: 'write `prove: program` with what the program states' };
  }
  const given = readGiven(fixture.given, rulebook, 'given');
  const tests = (['outcome', 'at-least', 'not'] as const).flatMap((test) => {
    const outcome = fixture[test];
    return outcome === undefined ? [] : [{ test, outcome, rank: rankOf(decision, outcome, test) }];
  });
  if (tests.length === 0)
    return { code: 'E402', at: [], message: 'it expects nothing', help: 'add `outcome`, `at-least` or `not`' };
  const answer = answerOf(decision, rulebook, given, reached);
  const actual = rankOf(decision, answer.outcome, 'outcome');
  const passes = {
    outcome: (published: number) => actual === published,
    'at-least': (published: number) => actual >= published,
    not: (published: number) => actual !== published,
  };
  const failed = tests.find(({ test, rank }) => !passes[test](rank));
  if (failed === undefined) return undefined;
  const words = { outcome: '', 'at-least': 'at least ', not: 'anything but ' };
  const waits = answer.needed.length > 0 ? `; it waits for ${quotedList(answer.needed)}` : '';
  const message = `\`${decision.id}\` answers \`${answer.outcome}\`, published is ${words[failed.test]}\`${failed.outcome}\`${waits}`;
  return { code: 'E402', at: [failed.test], message };
}

/** Compares whether a program with these facts is offered in a situation with what is published. */
export function proveProgram(fixture: FixtureThat<'program'>, rulebook: Rulebook, reached: Set<string>): Wrong | undefined {
  const decision = choiceOf(fixture.decision, rulebook);
  const offer = offerOf(
    decision,
    rulebook,
    readGiven(fixture.given, rulebook, 'given'),
    readGiven(fixture.program, rulebook, 'program'),
    reached,
  );
  if (offer.fits === fixture.fits) return undefined;
  const message = fixture.fits
    ? `\`${decision.id}\` does not offer this program: it lacks what ${quotedList(offer.lacks)} ask for, published is that it fits`
    : `\`${decision.id}\` offers this program, published is that it does not fit`;
  return { code: 'E402', at: ['fits'], message };
}

const sides = ['below', 'at', 'above'] as const;

/** Compares the answers just below, at and just above a threshold with the published ones. */
export function proveBoundary(fixture: FixtureThat<'boundary'>, rulebook: Rulebook, reached: Set<string>): Wrong | undefined {
  const decision = known('E306', 'decision', fixture.decision, rulebook.decisions, ['decision']);
  const expected = sides.flatMap((side) => (fixture[side] === undefined ? [] : [{ side, outcome: fixture[side] }]));
  if (new Set(expected.map(({ outcome }) => outcome)).size < 2)
    return {
      code: 'E402',
      at: [],
      message: 'no side of the threshold differs from another',
      help: 'add `below`, `at` and `above`',
    };
  const fact = known('E301', 'fact', fixture.fact, rulebook.facts, ['fact']);
  const { value, step } = thresholdOf(fact, fixture.threshold);
  const given = readGiven(fixture.given ?? {}, rulebook, 'given');
  const program = readGiven(fixture.program ?? {}, rulebook, 'program');
  const ofProgram = fact.statedBy === 'program' || fact.statedBy === 'machine';
  const outcomeWith = (crossing: Situation): string => {
    const situation = ofProgram ? given : { ...given, ...crossing };
    if (decision.kind === 'verdict') return answerOf(decision, rulebook, { ...given, ...crossing }, reached).outcome;
    return sayFits(offerOf(decision, rulebook, situation, ofProgram ? { ...program, ...crossing } : program, reached).fits);
  };
  for (const { side, outcome } of expected) {
    const actual = outcomeWith({ [fact.id]: value + { below: -step, at: 0, above: step }[side] });
    if (decision.kind === 'verdict') rankOf(decision, outcome, side);
    else known('E311', 'outcome', outcome, fitsOrNot, [side]);
    if (actual === outcome) continue;
    const where = side === 'at' ? 'at' : `just ${side}`;
    const message = `\`${decision.id}\` answers \`${actual}\` ${where} ${fixture.threshold}, published is \`${outcome}\``;
    return { code: 'E402', at: [side], message };
  }
  return undefined;
}

/** The threshold in the fact's base unit, and the smallest step away from it that is tried. */
function thresholdOf(fact: Fact, raw: string | number): { value: number; step: number } {
  const read = readFactValue(fact, raw);
  if (!('value' in read)) throw new FixtureError({ code: read.code, message: read.message, help: read.help, at: ['threshold'] });
  const { value } = read;
  if (typeof value !== 'number')
    throw new FixtureError({
      code: 'E309',
      at: ['fact'],
      message: `\`${fact.id}\` has no threshold`,
      help: 'name a quantity, a count or a date',
    });
  const isWhole = fact.type === 'count' || fact.type === 'date';
  return { value, step: isWhole ? 1 : Math.max(Math.abs(value) * 1e-6, 1e-9) };
}

/** Answers a decision and notes which rules were true. */
function answerOf(decision: Decision, rulebook: Rulebook, given: Situation, reached: Set<string>): Answer {
  const answer = decide(rulebook, decision.id, given);
  for (const { rule, certain } of answer.reasons) if (rule !== undefined && certain) reached.add(rule);
  return answer;
}

/** Whether a choice offers a program that states these facts, as if the clinic had no other. */
function offerOf(
  decision: Choice,
  rulebook: Rulebook,
  given: Situation,
  facts: Situation,
  reached: Set<string>,
): { fits: boolean; lacks: string[] } {
  const place = decision.place;
  const program: Program = { id: 'machine/program', name: 'program', machine: 'machine', use: '', facts, stages: [], place };
  const [kind = ''] = decision.from;
  const machine = {
    id: 'machine',
    name: 'machine',
    maker: '',
    model: '',
    serial: '',
    room: '',
    installed: '',
    instructions: { title: '', edition: '', kept: '' },
    kind,
    inService: true,
    facts: {},
    intervals: {},
  };
  const machines: Rulebook['machines'] = new Map([['machine', { ...machine, programs: [program], place }]]);
  const [offer] = answerOf(decision, { ...rulebook, machines }, given, reached).offers ?? [];
  return { fits: offer?.meets === true, lacks: (offer?.lacks ?? []).map(({ rule }) => rule) };
}

function choiceOf(id: string, rulebook: Rulebook): Choice {
  const decision = known('E306', 'decision', id, rulebook.decisions, ['decision']);
  if (decision.kind === 'choice') return decision;
  throw new FixtureError({
    code: 'E402',
    at: ['decision'],
    message: `\`${id}\` does not choose among programs`,
    help: 'write `prove: situation`',
  });
}

const fitsOrNot = new Map(['fits', 'does-not-fit'].map((outcome) => [outcome, outcome]));

function sayFits(fits: boolean): string {
  return fits ? 'fits' : 'does-not-fit';
}

function rankOf(decision: Verdict, outcome: string, at: string): number {
  return known('E311', 'outcome', outcome, new Map(decision.outcomes.map((each, rank) => [each, rank])), [at]);
}
