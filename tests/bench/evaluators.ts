/**
 * Measures the emitted module beside hand-written functions and other engines on the same made-up rules, and prints each goal with
 * the ratio reached. Everything is measured in turns with its baseline in this one process; ratios are medians.
 */
import { gzipSync } from 'node:zlib';
import { home, loadClinic, loadPacks, rulebookOn, sampleClinics } from '../../src/cli/load-rulebook.js';
import { rulebookToModule } from '../../src/emit/module/rulebook-to-module.js';
import type { Condition, Rulebook } from '../../src/link/rulebook.js';
import type { Evaluator } from '../emit/load-module.js';
import { columnsOf } from './columns.js';
import { installRivals, load, startsOf, writeModule } from './files.js';
import { handWritten } from './hand-written.js';
import { measureInTurns, type Subject, type Timing } from './measure.js';
import { rivals } from './rivals.js';
import { type Facts, type Kind, workload } from './workload.js';

type Hand = Record<string, (facts: Facts) => { outcome: string; reasons: string[]; rules?: unknown[] }> & {
  all(facts: Facts): Record<string, { outcome: string; reasons: string[] }>;
};

const goals: { name: string; reached: number; isMet: boolean; goal: string }[] = [];
function atMost(name: string, reached: number, goal: number): void {
  goals.push({ name, reached, isMet: reached <= goal, goal: `<= ${goal}` });
}
function atLeast(name: string, reached: number, goal: number): void {
  goals.push({ name, reached, isMet: reached >= goal, goal: `>= ${goal}` });
}

const ids = Array.from({ length: 8 }, (_, index) => `d${index}`);

/** Reads outcome and rules of each decision, as a caller would. */
function reading(
  name: string,
  count: number,
  situations: readonly Facts[],
  all: (facts: Facts) => unknown,
  key: 'reasons' | 'rules',
): Subject {
  const run = (start: number, end: number): number => {
    let sum = 0;
    for (let index = start; index < end; index += 1) {
      const answers = all(situations[index] ?? {}) as Record<string, { outcome: string; reasons: string[]; rules: string[] }>;
      for (const id of ids) {
        const answer = answers[id];
        if (answer !== undefined) sum += answer[key].length + answer.outcome.length;
      }
    }
    return sum;
  };
  return { name, count, run: (start, many) => run(start, start + many) };
}

function testsIn(condition: Condition): number {
  if (condition.kind === 'test') return 1;
  return condition.kind === 'not' ? testsIn(condition.of) : condition.of.reduce((sum, each) => sum + testsIn(each), 0);
}

const show = (times: ReadonlyMap<string, Timing>) => {
  for (const [name, { nanoseconds, ratio }] of times)
    console.log(`  ${name.padEnd(44)} ${(nanoseconds / 1000).toFixed(2).padStart(10)} us  x ${ratio.toFixed(3)}`);
};
const ratioOf = (times: ReadonlyMap<string, Timing>, name: string) => times.get(name)?.ratio ?? Number.NaN;
const timeOf = (times: ReadonlyMap<string, Timing>, name: string) => times.get(name)?.nanoseconds ?? Number.NaN;

const handOf = (name: string, rulebook: Rulebook, manner: 'plain' | 'careful' | 'traced') =>
  load<Hand>(name, handWritten(rulebook, manner));

/** A rule applies by hand where a missing fact makes its test false; of those the module must be certain of none that do not. */
function expectAgreement(module: Evaluator, hand: Hand, situations: readonly Facts[], factCount: number): void {
  for (const situation of situations) {
    const isComplete = Object.keys(situation).length === factCount;
    const [answers, byHand] = [module.decideAll(situation), hand.all(situation)];
    for (const id of ids) {
      const { outcome, rules = [] } = answers[id] ?? {};
      const fired = byHand[id]?.reasons ?? [];
      const agrees = isComplete
        ? outcome === byHand[id]?.outcome && rules.join() === fired.join()
        : rules.every((rule) => fired.includes(rule));
      const notFalse = isComplete
        ? []
        : module.trace(id, situation).rules.flatMap(({ rule, truth }) => (truth === false ? [rule] : []));
      if (!agrees || fired.some((rule) => notFalse.includes(rule))) throw new Error(`${id}: ${JSON.stringify(situation)}`);
    }
  }
}

async function measure120(): Promise<void> {
  const { rulebook, situations } = workload('dense', 120, 10_000, 0.05);
  const rules = [...rulebook.decisions.values()].flatMap((each) => each.rules);
  const { code } = rulebookToModule(rulebook);
  const module = await load<Evaluator>('module', code);
  const [plain, careful, traced] = [
    await handOf('plain', rulebook, 'plain'),
    await handOf('careful', rulebook, 'careful'),
    await handOf('traced', rulebook, 'traced'),
  ];
  const complete = workload('dense', 120, 10_000, 0).situations;
  expectAgreement(module, plain, situations.slice(0, 1000), rulebook.facts.size);
  expectAgreement(module, plain, complete.slice(0, 1000), rulebook.facts.size);
  const others = rivals(rulebook, situations);
  for (const rival of others)
    for (const situation of situations.slice(0, 20)) {
      const expected = Object.values(plain.all(situation)).flatMap(({ reasons }) => reasons);
      const fired = await rival.fired(situation);
      if (fired.sort().join() !== expected.sort().join()) throw new Error(`${rival.name}: ${JSON.stringify(situation)}`);
    }
  const fired =
    complete
      .slice(0, 1000)
      .reduce((sum, each) => sum + ids.reduce((of, id) => of + (plain.all(each)[id]?.reasons.length ?? 0), 0), 0) / 1000;
  console.log(
    `\n8 decisions, ${rules.length} rules, ${rulebook.facts.size} facts, ${(rules.reduce((sum, { when }) => sum + testsIn(when), 0) / rules.length).toFixed(1)} tests a rule, ${situations.length} situations with 5 % missing; ${fired.toFixed(1)} rules apply on average`,
  );
  const hand = reading('hand-written', 2500, situations, (facts) => plain.all(facts), 'reasons');
  const times = await measureInTurns(
    [
      hand,
      reading('hand-written, facts read into locals', 2500, situations, (facts) => careful.all(facts), 'reasons'),
      reading('module, all decisions with rules', 2500, situations, (facts) => module.decideAll(facts), 'rules'),
      {
        name: 'module, outcomes only',
        count: 1000,
        run: (start, count) => {
          let sum = 0;
          for (let index = start; index < start + count; index += 1)
            for (const id of ids) sum += module.outcomeOf(id, situations[index] ?? {}).length;
          return sum;
        },
      },
      {
        name: 'module, decide with reasons in full',
        count: 300,
        run: (start, count) => {
          let sum = 0;
          for (let index = start; index < start + count; index += 1)
            for (const id of ids) sum += module.decide(id, situations[index] ?? {}).reasons.length;
          return sum;
        },
      },
    ],
    situations.length,
  );
  for (const rival of others)
    for (const [name, time] of await measureInTurns([hand, rival], situations.length))
      if (name === rival.name) times.set(name, time);
  show(times);
  const own = ratioOf(times, 'module, all decisions with rules');
  atMost('all decisions with rules, of hand-written', own, 0.4);
  atMost('the same, of hand-written with locals', own / ratioOf(times, 'hand-written, facts read into locals'), 0.7);
  const floors = [5, 40, 250, 250];
  others.forEach(({ name }, index) => {
    atLeast(`times faster than ${name}`, ratioOf(times, name) / own, floors[index] ?? 0);
  });

  console.log('\nTrace, missing facts, columns');
  const untraced = await load<Evaluator>(
    'untraced',
    code
      .split('\n')
      .filter((line) => !line.startsWith('const truths='))
      .join('\n')
      .replace('export function trace', 'function trace'),
  );
  const traceTimes = await measureInTurns(
    [
      reading('module without the code of trace', 2500, situations, (facts) => untraced.decideAll(facts), 'rules'),
      reading('module', 2500, situations, (facts) => module.decideAll(facts), 'rules'),
    ],
    situations.length,
    31,
  );
  show(traceTimes);
  atMost('cost of a trace not asked for, of the module without', ratioOf(traceTimes, 'module'), 1.03);
  const oneTrace = (name: string, trace: (facts: Facts) => { rules?: unknown[] }): Subject => ({
    name,
    count: 2000,
    run: (start, count) => {
      let sum = 0;
      for (let index = start; index < start + count; index += 1) sum += trace(situations[index] ?? {}).rules?.length ?? 0;
      return sum;
    },
  });
  const fullTraces = await measureInTurns(
    [
      oneTrace('hand-written, one decision with trace', (facts) => traced.d0?.(facts) ?? {}),
      oneTrace('module, trace of one decision', (facts) => module.trace('d0', facts)),
    ],
    situations.length,
  );
  show(fullTraces);
  atMost('trace of one decision, of hand-written with trace', ratioOf(fullTraces, 'module, trace of one decision'), 1);
  const filled = situations.map((each, index) => ({ ...complete[index], ...each }));
  const kleene = await measureInTurns(
    [
      reading('module, nothing missing', 2500, filled, (facts) => module.decideAll(facts), 'rules'),
      reading('module, 5 % missing', 2500, situations, (facts) => module.decideAll(facts), 'rules'),
    ],
    situations.length,
  );
  show(kleene);
  atMost('with missing facts, of the same with none missing', ratioOf(kleene, 'module, 5 % missing'), 1.3);
  const columns = columnsOf(rulebook, situations);
  const batch = await measureInTurns(
    [
      hand,
      {
        name: 'module, columns',
        count: situations.length,
        run: (_, count) => {
          const many = module.decideAllMany(columns, count);
          return ids.reduce((sum, id) => sum + (many[id]?.outcomes[5] ?? 0) + (many[id]?.fired[5] ?? 0), 0);
        },
      },
    ],
    situations.length,
  );
  show(batch);
  atLeast('times faster in columns than hand-written', 1 / ratioOf(batch, 'module, columns'), 12);
  measureStarts(rulebook, code, situations[0] ?? {});
}

function measureStarts(rulebook: Rulebook, code: string, situation: Facts): void {
  const facts = JSON.stringify(situation);
  const hand = writeModule('start-hand', handWritten(rulebook, 'plain'));
  const module = writeModule('start-module', code);
  const [bare = 0, byHand = 0, own = 0] = startsOf(
    [
      writeModule('start-1', ''),
      writeModule('start-2', `import { d0 } from ${JSON.stringify(hand)}; d0(${facts});`),
      writeModule('start-3', `import { decide } from ${JSON.stringify(module)}; decide('d0', ${facts}).outcome;`),
    ],
    41,
  );
  console.log(
    `\nStart: bare Node ${bare.toFixed(1)} ms; hand-written +${(byHand - bare).toFixed(1)} ms; module +${(own - bare).toFixed(1)} ms`,
  );
  atMost('start with the first decision, of hand-written, over bare Node', (own - bare) / (byHand - bare), 1.5);
}

async function measureGrowth(kind: Kind, goal: number): Promise<void> {
  console.log(`\nGrowth, ${kind}`);
  const own: number[] = [];
  for (const count of [120, 1200, 12_000]) {
    const { rulebook, situations } = workload(kind, count, 2000, 0.05);
    const module = await load<Evaluator>(`${kind}-${count}`, rulebookToModule(rulebook).code);
    const plain = await handOf(`${kind}-${count}-plain`, rulebook, 'plain');
    expectAgreement(module, plain, situations.slice(0, 20), rulebook.facts.size);
    const baseline = `hand-written, ${count} rules`;
    const name = `module, ${count} rules`;
    const times = await measureInTurns(
      [
        reading(baseline, count > 1000 ? 60 : 1000, situations, (facts) => plain.all(facts), 'reasons'),
        reading(name, 1000, situations, (facts) => module.decideAll(facts), 'rules'),
      ],
      situations.length,
      11,
    );
    show(times);
    own.push(timeOf(times, name));
    if (count === 12_000) atMost(`12,000 rules (${kind}), of hand-written`, ratioOf(times, name), goal);
  }
  const growth = (own[2] ?? Number.NaN) / (own[0] ?? Number.NaN);
  if (kind === 'keyed') atMost('time for 12,000 rules (keyed), of that for 120', growth, 5);
  else console.log(`  12,000 rules take x ${growth.toFixed(1)} of the time for 120`);
}

function printSizes(): void {
  console.log('\nSize of the modules of the sample clinics');
  const packs = loadPacks(`${home}rules`, home, 'rules');
  for (const folder of sampleClinics()) {
    const { rulebook } = rulebookOn(loadClinic(packs, folder, home), '2026-11-25');
    if (rulebook === undefined) continue;
    const { code, types } = rulebookToModule(rulebook);
    const name = folder.split('/').at(-1) ?? folder;
    const kilobytes = Buffer.byteLength(code) / 1000;
    console.log(
      `  ${name.padEnd(16)} ${kilobytes.toFixed(1)} kB, ${(gzipSync(code).length / 1000).toFixed(1)} kB packed; types ${(types.length / 1000).toFixed(1)} kB`,
    );
    atMost(`size of ${name} in kB`, kilobytes, 100);
  }
}

installRivals();
await measure120();
await measureGrowth('keyed', 0.01);
await measureGrowth('dense', 0.03);
printSizes();
console.log('\nGoals');
for (const { name, reached, isMet, goal } of goals)
  console.log(
    `  ${isMet ? 'met   ' : 'MISSED'}  ${name.padEnd(66)} ${reached.toFixed(reached < 0.1 ? 4 : 2).padStart(8)}  ${goal}`,
  );
