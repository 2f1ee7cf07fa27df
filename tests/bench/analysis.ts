import { Encoder, testsOfDecision } from '../../src/analyse/encode.js';
import { impactOf } from '../../src/analyse/impact.js';
import { analyse, analyseDecision } from '../../src/analyse/questions.js';
import { regionsOf, usualEffort, whereAllIsStated } from '../../src/analyse/regions.js';
import type { Found, Literal } from '../../src/analyse/solver.js';
import { type Space, spaceOf } from '../../src/analyse/space.js';
import { looserIn } from '../../src/analyse/stricter.js';
import type { Condition, Decision, Rulebook } from '../../src/link/rulebook.js';
import { mapCondition, mapDecision, rewritten } from '../analyse/changed-rulebook.js';
import { shippedRulebooks } from '../analyse/shipped.js';
import { startZ3, type Z3 } from '../analyse/z3.js';
import { changes, lookAt } from '../analyse/z3-questions.js';
import { type Cost, costOf, usualCost } from './conflicts.js';
import { keyed, many, wide } from './made-rulebooks.js';

const say = (line = ''): boolean => process.stdout.write(`${line}\n`);
const inMs = (time: number): string => (time < 10 ? time.toFixed(1) : Math.round(time).toLocaleString('en-US'));

function row(name: string, cost: Cost | undefined, more = ''): void {
  if (cost === undefined) return;
  const { time, conflicts, searches } = cost;
  say(
    `  ${name.padEnd(46)}${inMs(time).padStart(9)} ms ${String(conflicts).padStart(9)} conflicts ${String(searches).padStart(7)} searches  ${more}`,
  );
}

/** A rule of a decision with its first bound moved, or else one member more. */
function edited(rulebook: Rulebook, id: string, at: number): Rulebook {
  return mapDecision(rulebook, id, (rules) =>
    rules.map((rule, index) => {
      if (index !== at) return rule;
      let isDone = false;
      const when = mapCondition(rule.when, (part): Condition => {
        if (isDone || part.kind !== 'test') return part;
        const { test } = part;
        if (test.kind === 'compare') {
          isDone = true;
          return { ...part, test: { ...test, value: test.value + 1, shown: `${test.value + 1}` } };
        }
        const others = (rulebook.facts.get(part.fact)?.members ?? []).filter((each) => !test.members.some((one) => one === each));
        const [more] = others;
        if (more === undefined) return part;
        isDone = true;
        return { ...part, test: { ...test, members: [...test.members, more] } as typeof test };
      });
      return { ...rule, when };
    }),
  );
}

/** The same rules said in another way and order. */
function refactored(rulebook: Rulebook): Rulebook {
  return [...rulebook.decisions.keys()].reduce(
    (each, id) => mapDecision(each, id, (rules) => [...rules].reverse().map((rule) => ({ ...rule, when: rewritten(rule.when) }))),
    rulebook,
  );
}

function verdictsOf(before: Rulebook, after: Rulebook): string {
  const counts = new Map<string, number>();
  for (const { verdict } of impactOf(before, after).decisions) counts.set(verdict, (counts.get(verdict) ?? 0) + 1);
  return [...counts].map(([verdict, count]) => `${verdict} ${count}`).join(', ');
}

function benchShipped(): void {
  say('Shipped rules');
  const { base, regions, clinics } = shippedRulebooks();
  const all = [...regions.values(), ...clinics.values()];
  const rules = all.flatMap(({ decisions }) => [...decisions.values()].flatMap((each) => each.rules)).length;
  const first = costOf(() => all.map((each) => analyse(each)));
  const undecided = first.result.flat().flatMap((each) => each.undecided).length;
  const about = `${all.length} rulebooks, ${rules} rules, ${undecided} not decided`;
  row('all questions, at first', first, `goal 1,000 ms; ${about}`);
  row(
    'all questions, again',
    usualCost(() => all.map((each) => analyse(each)), 3),
    'goal 1,000 ms',
  );
  const [one] = clinics.values();
  if (one === undefined) return;
  row(
    'all questions of one clinic',
    usualCost(() => analyse(one), 3),
  );
  const [region] = regions.values();
  if (region === undefined) return;
  row(
    'impact: base pack beside a region',
    usualCost(() => impactOf(base, region), 3),
    `goal 300 ms; ${verdictsOf(base, region)}`,
  );
  const [widest] = [...one.decisions.values()].sort((a, b) => b.rules.length - a.rules.length);
  if (widest === undefined) return;
  const next = edited(one, widest.id, 0);
  row(
    `one edited rule of \`${widest.id}\` (${widest.rules.length} rules)`,
    usualCost(() => oneEdit(one, next, widest)),
    'goal 50 ms',
  );
  row(
    '  of these: impact alone',
    usualCost(() => impactOf(one, next)),
    verdictsOf(one, next),
  );
}

function oneEdit(before: Rulebook, after: Rulebook, { id }: Decision): void {
  const decision = after.decisions.get(id);
  if (decision !== undefined) analyseDecision(decision, after);
  looserIn(id, before, after);
  impactOf(before, after);
}

/** Whether each literal can be true; one that was true in a situation found before is not asked. */
function everTrue({ circuit: { solver } }: Space, literals: readonly Literal[]): Found[] {
  const seen = new Set<Literal>();
  return literals.map((literal) => {
    if (seen.has(literal)) return true;
    const found = solver.solve([literal], usualEffort.conflicts);
    if (found === true) for (const each of literals) if (solver.isTrue(each)) seen.add(each);
    return found;
  });
}

function medianEdit(rulebook: Rulebook): Cost {
  const costs = [...rulebook.decisions.keys()].slice(0, 50).map((id) => {
    const next = edited(rulebook, id, 3);
    return usualCost(() => impactOf(rulebook, next), 3);
  });
  const sorted = costs.sort((a, b) => a.time - b.time);
  return sorted[Math.floor(sorted.length / 2)] ?? { time: 0, conflicts: 0, searches: 0 };
}

const kinds = { wide, many, keyed };

/** The parts of an analysis, so that each is counted by itself. */
function benchMade(kind: keyof typeof kinds, rules: number, facts: number): void {
  const rulebook = kinds[kind](rules, facts);
  say(`${kind}: ${rules.toLocaleString('en-US')} rules, ${facts} facts, ${rulebook.decisions.size} decisions`);
  const decisions = [...rulebook.decisions.values()];
  const encoded = costOf(() =>
    decisions.map(({ id }) => {
      const space = spaceOf(testsOfDecision(rulebook, id), [rulebook.facts]);
      return { space, ...new Encoder(space, rulebook).decision(id) };
    }),
  );
  row('formulas', encoded);
  const gaps = costOf(() =>
    encoded.result.map(({ space, rules }) => {
      const silent = space.circuit.and(rules.map(({ possible }) => -possible));
      return regionsOf(space, silent, usualEffort, whereAllIsStated(space));
    }),
  );
  const found = gaps.result.filter(({ boxes }) => boxes.length > 0).length;
  row('gap', gaps, `${found} with gaps, ${gaps.result.filter(({ givenUp }) => givenUp).length} not decided`);
  const step = rules >= 10_000 ? 100 : 1;
  const alive = costOf(() =>
    encoded.result.flatMap(({ space, rules }) =>
      everTrue(
        space,
        rules.filter((_, index) => index % step === 0).map(({ certain }) => certain),
      ),
    ),
  );
  const count = (answer: boolean | undefined) => alive.result.filter((each) => each === answer).length;
  row(
    `every rule ever true${step > 1 ? `, each ${step}th` : ''}`,
    alive,
    `${count(false)} never, ${count(undefined)} not decided`,
  );
  const id = `d${Math.floor(decisions.length / 2)}`;
  const next = edited(rulebook, id, 3);
  row(
    'impact of one edit',
    rules >= 10_000 ? costOf(() => impactOf(rulebook, next)) : usualCost(() => impactOf(rulebook, next), 3),
    verdictsOf(rulebook, next),
  );
  if (decisions.length > 1) row('  the same in each decision: median', medianEdit(rulebook));
  const copy = refactored(rulebook);
  const proof = costOf(() => verdictsOf(rulebook, copy));
  row('refactored copy means the same', proof, proof.result);
}

async function benchZ3(z3: Z3, kind: keyof typeof kinds, rules: number): Promise<void> {
  const rulebook = kinds[kind](rules, 12);
  say(`${kind}: ${rules.toLocaleString('en-US')} rules, 12 facts, beside z3`);
  const decisions = [...rulebook.decisions.values()];
  const id = `d${Math.floor(decisions.length / 2)}`;
  const [next, copy] = [edited(rulebook, id, 3), refactored(rulebook)];
  // One solver with a thousand questions takes minutes: each twentieth is asked, and counted twenty times.
  const step = decisions.some((each) => each.rules.length > 200) ? 20 : 1;
  const beside = async (name: string, ours: () => unknown, theirs: () => Promise<unknown>, times = 1): Promise<void> => {
    const { time } = costOf(ours);
    const start = performance.now();
    const answer = await theirs().then(
      () => '',
      (error: unknown) => ` (${String(error).slice(0, 60)})`,
    );
    const other = (performance.now() - start) * times;
    say(
      `  ${name.padEnd(46)}${inMs(time).padStart(9)} ms, z3 ${inMs(other).padStart(9)} ms${answer}, ratio ${(other / time).toFixed(1)}`,
    );
  };
  const each = async (work: (decision: Decision) => Promise<unknown>): Promise<void> => {
    for (const decision of decisions) await work(decision);
  };
  await beside(
    `gap, every rule ever true, ever the outcome`,
    () => analyse(rulebook),
    () => each((d) => lookAt(z3, rulebook, d, (index) => index % step === 0)),
    step,
  );
  await beside(
    'impact of one edit',
    () => impactOf(rulebook, next),
    () => each((d) => changes(z3, rulebook, next, d.id)),
  );
  await beside(
    'refactored copy means the same',
    () => impactOf(rulebook, copy),
    () => each((d) => changes(z3, rulebook, copy, d.id)),
  );
}

// Which parts to run, all without any: shipped, growth, small (of 1,000 rules each), z3.
const wanted = process.argv.slice(2);
const isWanted = (part: string) => wanted.length === 0 || wanted.includes(part);

if (isWanted('shipped')) benchShipped();
if (isWanted('growth'))
  for (const kind of ['wide', 'many', 'keyed'] as const)
    for (const rules of [100, 1000, 10_000]) for (const facts of [8, 12, 16]) benchMade(kind, rules, facts);
if (isWanted('small')) for (const kind of ['wide', 'many', 'keyed'] as const) benchMade(kind, 1000, 12);
if (isWanted('z3')) {
  const z3 = await startZ3();
  for (const kind of ['wide', 'many', 'keyed'] as const) for (const rules of [100, 1000]) await benchZ3(z3, kind, rules);
  await z3.end();
}
