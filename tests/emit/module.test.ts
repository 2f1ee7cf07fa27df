import { join } from 'node:path';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { home, loadClinic, loadPacks, rulebookOn, sampleClinics } from '../../src/cli/load-rulebook.js';
import type { Answer } from '../../src/decide/answer.js';
import { decide, knownFacts } from '../../src/decide/decide.js';
import { truthOf } from '../../src/decide/truth.js';
import { rulebookToModule } from '../../src/emit/module/rulebook-to-module.js';
import { readFactValue } from '../../src/link/read-values.js';
import type { FactValue, Rulebook, Situation } from '../../src/link/rulebook.js';
import { workload } from '../bench/workload.js';
import { completeSituation, randomRulebook, rulebookOf } from '../decide/random-rulebook.js';
import { hostileRulebook } from './hostile-rulebook.js';
import { type Evaluator, evaluatorOf } from './load-module.js';
import { manyRules } from './many-rules.js';
import { seeded, situationsOf } from './random-situation.js';

const someSituation: fc.Arbitrary<Record<string, unknown>> = fc
  .tuple(
    completeSituation,
    fc.uniqueArray(fc.constantFrom<string>('hollow', 'kind', 'materials', 'width', 'uses')),
    fc.option(fc.constantFrom('open', 'ask', 'shut')),
    fc.constantFrom(null, undefined),
  )
  .map(([whole, left, told, absent]): Record<string, unknown> => {
    const stated = Object.entries(whole).map(([fact, value]): [string, unknown] => [fact, left.includes(fact) ? absent : value]);
    return { ...Object.fromEntries(stated), ...(told !== null && { route: told }), unknown: 1 };
  });

/** A raw situation as `decide` takes it: what is not stated is left out. */
function read(rulebook: Rulebook, raw: Record<string, unknown>): Situation {
  return Object.fromEntries(
    Object.entries(raw).flatMap(([id, value]): [string, FactValue][] => {
      const fact = rulebook.facts.get(id);
      if (fact === undefined || value === null || value === undefined) return [];
      const result = readFactValue(fact, value);
      if (!('value' in result)) throw new Error(result.message);
      return [[id, result.value]];
    }),
  );
}

/** An answer with the facts of its reasons as the caller gave them. */
function asGiven(answer: Answer, raw: Record<string, unknown>, rulebook: Rulebook): Answer {
  return {
    ...answer,
    reasons: answer.reasons.map((reason) => ({
      ...reason,
      facts: Object.fromEntries(
        Object.entries(reason.facts).map(([id, value]) => {
          const type = rulebook.facts.get(id)?.type;
          const given = Object.hasOwn(raw, id) ? (raw[id] ?? undefined) : undefined;
          return [id, given === undefined || type === 'set' ? value : (given as FactValue)];
        }),
      ),
    })),
  };
}

function expectSame(rulebook: Rulebook, evaluator: Evaluator, raw: Record<string, unknown>): void {
  const situation = read(rulebook, raw);
  const all = evaluator.decideAll(raw);
  for (const id of rulebook.decisions.keys()) {
    const expected = asGiven(decide(rulebook, id, situation), raw, rulebook);
    const answer = evaluator.decide(id, raw);
    expect(answer.toJSON()).toEqual(expected);
    expect(answer.outcome).toBe(expected.outcome);
    expect(evaluator.outcomeOf(id, raw)).toBe(expected.outcome);
    const rules = (certain: boolean) =>
      expected.reasons.flatMap((reason) => (reason.certain === certain ? (reason.rule ?? []) : []));
    expect(all[id]).toEqual({ outcome: expected.outcome, settled: expected.settled, rules: rules(true), open: rules(false) });
  }
}

const packs = loadPacks(join(home, 'rules'), home, 'rules');
const sampleRulebook = (folder: string): Rulebook => {
  const { rulebook } = rulebookOn(loadClinic(packs, folder, home), '2026-11-25');
  if (rulebook === undefined) throw new Error(folder);
  return rulebook;
};

/** The situations as columns of plain arrays. */
const columnsOf = (situations: readonly Record<string, unknown>[]) =>
  Object.fromEntries(
    [...new Set(situations.flatMap(Object.keys))].map((fact) => [
      fact,
      situations.map((each) => (Object.hasOwn(each, fact) ? each[fact] : undefined)),
    ]),
  );

function expectSameColumns(rulebook: Rulebook, evaluator: Evaluator, situations: readonly Record<string, unknown>[]): void {
  const all = evaluator.decideAllMany(columnsOf(situations), situations.length);
  const briefs = situations.map((situation) => evaluator.decideAll(situation));
  for (const id of rulebook.decisions.keys()) {
    const many = evaluator.decideMany(id, columnsOf(situations), situations.length);
    expect(all[id]).toEqual(many);
    situations.forEach((_, index) => {
      const brief = briefs[index]?.[id];
      expect(many.names[many.outcomes[index] ?? -1]).toBe(brief?.outcome);
      expect(many.settled[index]).toBe(Number(brief?.settled));
      const fired = many.rules.filter((_, rule) => ((many.fired[index * many.words + (rule >> 5)] ?? 0) >>> (rule & 31)) & 1);
      expect(fired).toEqual(brief?.rules);
    });
  }
}

function expectTrace(rulebook: Rulebook, evaluator: Evaluator, raw: Record<string, unknown>): void {
  const given = knownFacts(rulebook, read(rulebook, raw));
  for (const decision of rulebook.decisions.values()) {
    const { rules } = evaluator.trace(decision.id, raw);
    expect(rules.map(({ rule, truth }) => [rule, truth ?? undefined])).toEqual(
      decision.rules.map((rule) => [rule.id, truthOf(rule.when, given)]),
    );
  }
}

describe('the emitted module', () => {
  it('answers as `decide` does, field by field, with what the clinic states', async () => {
    await fc.assert(
      fc.asyncProperty(
        randomRulebook,
        fc.array(someSituation, { minLength: 25, maxLength: 25 }),
        someSituation,
        async (random, situations, stated) => {
          const { route: _, unknown: __, ...facts } = stated;
          const present = Object.fromEntries(
            Object.entries(facts).filter(([, value]) => value !== null && value !== undefined),
          ) as Situation;
          const rulebook: Rulebook = { ...random, clinic: { ...random.clinic, facts: present } };
          const evaluator = await evaluatorOf(rulebook);
          for (const situation of situations) expectSame(rulebook, evaluator, situation);
        },
      ),
      { numRuns: 200 },
    );
  });

  it('answers many situations in columns as one by one, and traces each rule to its truth', async () => {
    await fc.assert(
      fc.asyncProperty(
        randomRulebook,
        fc.array(someSituation, { minLength: 10, maxLength: 10 }),
        async (rulebook, situations) => {
          const evaluator = await evaluatorOf(rulebook);
          expectSameColumns(rulebook, evaluator, situations);
          for (const situation of situations) expectTrace(rulebook, evaluator, situation);
        },
      ),
      { numRuns: 60 },
    );
  });

  it.each(sampleClinics())('answers for %s as `decide` does', async (folder) => {
    const rulebook = sampleRulebook(folder);
    const evaluator = await evaluatorOf(rulebook);
    const random = seeded(7);
    const situation = situationsOf(rulebook, random);
    const situations = [0, 0.05, 0.1, 0.3, 0.6, 0.9].flatMap((missing) => Array.from({ length: 25 }, () => situation(missing)));
    for (const each of situations) expectSame(rulebook, evaluator, each);
    for (const each of situations.slice(0, 40)) expectTrace(rulebook, evaluator, each);
    expectSameColumns(rulebook, evaluator, situations.slice(0, 40));
    // Many are evaluated column by column.
    expectSameColumns(
      rulebook,
      evaluator,
      Array.from({ length: 1001 }, (_, index) => situations[index % situations.length] ?? {}),
    );
    expect(rulebookToModule(sampleRulebook(folder))).toEqual(rulebookToModule(rulebook));
  });

  it('refuses what `decide` would not be given', async () => {
    const rulebook = sampleRulebook(join(home, 'seeds/harrow-mills'));
    const evaluator = await evaluatorOf(rulebook);
    const reads = new Map(evaluator.decisions.map(({ id, reads: facts }) => [id, facts]));
    const wrong = [
      true,
      'x',
      '',
      1,
      0,
      -1,
      0.5,
      1e10,
      -300,
      101,
      Number.NaN,
      Number.POSITIVE_INFINITY,
      [],
      ['x'],
      [1],
      {},
      '2026-02-30',
      1n,
    ];
    for (const [decision, facts] of reads)
      for (const id of facts) {
        const fact = rulebook.facts.get(id);
        if (fact === undefined) throw new Error(id);
        for (const value of wrong) {
          const fits = typeof value === 'string' && fact.type === 'quantity' ? false : 'value' in readFactValue(fact, value);
          if (fits) expect(() => evaluator.decide(decision, { [id]: value })).not.toThrow();
          else {
            expect(() => evaluator.decide(decision, { [id]: value })).toThrow(evaluator.FactError);
            expect(() => evaluator.decideAll({ [id]: value })).toThrow(
              expect.objectContaining({ fact: id, expected: expect.any(String) }),
            );
          }
        }
      }
    for (const decision of evaluator.decisions) {
      const other = [...rulebook.facts.keys()].find((id) => !decision.reads.includes(id)) ?? '';
      expect(() => evaluator.decide(decision.id, { [other]: {} })).not.toThrow();
    }
    expect(() => evaluator.decide('no-such', {})).toThrow(RangeError);
    expect(() => evaluator.outcomeOf('__proto__', {})).toThrow(RangeError);
    expect(() => evaluator.trace('no-such', {})).toThrow(RangeError);
    expect(() => evaluator.decideMany('no-such', {}, 1)).toThrow(RangeError);
  });

  it('takes 600 rules in one decision, also when rules cannot be put into rows', async () => {
    const random = seeded(11);
    const rulebook = manyRules(600, random);
    const evaluator = await evaluatorOf(rulebook);
    const situation = situationsOf(rulebook, random);
    const situations = [0, 0.1, 0.5].flatMap((missing) => Array.from({ length: 60 }, () => situation(missing)));
    for (const each of situations) expectSame(rulebook, evaluator, each);
    expectSameColumns(rulebook, evaluator, situations.slice(0, 60));
    for (const each of situations.slice(0, 20)) expectTrace(rulebook, evaluator, each);
  });

  it('looks rules up by an enum that most of them name', async () => {
    const { rulebook } = workload('keyed', 1600, 0, 0);
    const evaluator = await evaluatorOf(rulebook);
    const situation = situationsOf(rulebook, seeded(5));
    const situations = [0, 0.05, 0.3].flatMap((missing) => Array.from({ length: 25 }, () => situation(missing)));
    for (const each of situations) expectSame(rulebook, evaluator, each);
    for (const each of situations)
      expectSame(rulebook, evaluator, Object.fromEntries(Object.entries(each).filter(([id]) => id !== 'item')));
    expectSameColumns(rulebook, evaluator, situations.slice(0, 40));
  });

  it('takes any word for a word', async () => {
    const rulebook = hostileRulebook();
    const evaluator = await evaluatorOf(rulebook);
    const random = seeded(3);
    const situation = situationsOf(rulebook, random);
    for (const missing of [0, 0.2, 0.8])
      for (let count = 0; count < 10; count += 1) expectSame(rulebook, evaluator, situation(missing));
    expectSame(rulebook, evaluator, {});
    expect(evaluator.rulebook).toMatchObject({ clinic: rulebook.clinic.name });
    expect(globalThis).not.toHaveProperty('harmed');
    const { code, types } = rulebookToModule(rulebook);
    expect(code).not.toMatch(/<\/script|<!--|[\u2028\u2029]/);
    expect(types).not.toMatch(/<\/script|[\u2028\u2029]/);
  });

  it('reads columns of typed arrays', async () => {
    const rulebook = rulebookOf(
      fc
        .sample(randomRulebook, { numRuns: 40, seed: 5 })
        .flatMap(({ decisions }) => [...decisions.values()])
        .filter(({ id, rules }) => id === 'route' && rules.length > 4)
        .slice(0, 1),
    );
    const evaluator = await evaluatorOf(rulebook);
    const kinds = ['a', 'b', 'c'];
    const materials = ['steel', 'brass', 'glass'];
    const columns = {
      hollow: Uint8Array.of(0, 1, 255, 1),
      kind: Int8Array.of(0, 1, 2, -1),
      materials: Int32Array.of(0, 5, -1, 7),
      width: Float64Array.of(1, Number.NaN, 3, 4.5),
      uses: Int32Array.of(1, 2, 3, 4),
    };
    const rows = [0, 1, 2, 3].map((row) => ({
      hollow: [false, true, undefined, true][row],
      kind: kinds[row],
      materials: row === 2 ? undefined : materials.filter((_, place) => ((columns.materials[row] ?? 0) >> place) & 1),
      width: row === 1 ? undefined : columns.width[row],
      uses: columns.uses[row],
    }));
    for (const id of rulebook.decisions.keys())
      expect(evaluator.decideMany(id, columns, 4)).toEqual(evaluator.decideMany(id, columnsOf(rows), 4));
    expect(() => evaluator.decideAllMany({ ...columns, kind: Uint8Array.of(0, 1, 2, 3) }, 4)).toThrow(evaluator.FactError);
  });
});
