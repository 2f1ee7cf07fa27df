import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { impactOf } from '../../src/analyse/impact.js';
import { looserIn } from '../../src/analyse/stricter.js';
import { decide } from '../../src/decide/decide.js';
import type { Condition, Rule, Rulebook, Situation, Verdict } from '../../src/link/rulebook.js';
import { completeSituation, facts, randomRulebook, rulebookOf } from '../decide/random-rulebook.js';

/** What a random rulebook becomes: a rule of `route` changed in one way, or only written in another. */
type Edit = (verdict: Verdict) => Verdict;

const onFirst =
  (change: (rule: Rule) => Rule): Edit =>
  ({ rules: [first, ...others], ...verdict }) => ({
    ...verdict,
    rules: first === undefined ? [] : [change(first), ...others],
  });
const not = (of: Condition): Condition => ({ kind: 'not', of });
const changes: Edit[] = [
  onFirst((rule) => ({ ...rule, outcome: rule.outcome === 'shut' ? 'open' : 'shut' })),
  onFirst((rule) => ({ ...rule, when: not(rule.when) })),
  ({ rules: [, ...others], ...verdict }) => ({ ...verdict, rules: others }),
  (verdict) => ({ ...verdict, otherwise: verdict.otherwise === 'shut' ? 'ask' : 'shut' }),
];
const rewritings: Edit[] = [
  onFirst((rule) => ({ ...rule, when: not(not(rule.when)) })),
  onFirst((rule) => ({ ...rule, when: not({ kind: 'any', of: [not(rule.when), not({ kind: 'all', of: [rule.when] })] }) })),
  (verdict) => ({ ...verdict, rules: [...verdict.rules].reverse() }),
  ({ rules, ...verdict }) => ({
    ...verdict,
    rules: rules.flatMap((rule) =>
      rule.when.kind === 'any' ? rule.when.of.map((when, index) => ({ ...rule, name: `${rule.name}-${index}`, when })) : [rule],
    ),
  }),
];

function edited(rulebook: Rulebook, edit: Edit): Rulebook {
  const route = rulebook.decisions.get('route');
  if (route?.kind !== 'verdict') throw new Error('no verdict');
  return { ...rulebook, decisions: new Map(rulebook.decisions).set('route', edit(route)) };
}

const partial: fc.Arbitrary<Situation> = fc
  .tuple(completeSituation, fc.uniqueArray(fc.constantFrom('hollow', 'kind', 'materials', 'width', 'uses')))
  .map(([whole, left]) => Object.fromEntries(Object.entries(whole).filter(([fact]) => !left.some((each) => each === fact))));

describe('the impact of a change', () => {
  it('is found exactly: each region changes as it says, and where no region is, no answer changes', () => {
    fc.assert(
      fc.property(
        randomRulebook,
        fc.constantFrom(...changes),
        fc.array(fc.oneof(completeSituation, partial), { minLength: 12, maxLength: 12 }),
        (before, edit, situations) => {
          const after = edited(before, edit);
          for (const { decision, verdict, changes: found, open } of impactOf(before, after).decisions) {
            for (const { before: was, after: is, regions } of found)
              for (const { situation } of regions) {
                expect(decide(before, decision, situation).outcome).toBe(was);
                expect(decide(after, decision, situation).outcome).toBe(is);
              }
            for (const { situation } of open?.regions ?? [])
              expect(decide(before, decision, situation).possible).not.toEqual(decide(after, decision, situation).possible);
            for (const situation of situations)
              if (
                JSON.stringify(decide(before, decision, situation).possible) !==
                JSON.stringify(decide(after, decision, situation).possible)
              )
                expect(verdict).not.toBe('same');
            if (verdict === 'same') expect(found).toEqual([]);
            else expect(found.length + (open?.regions.length ?? 0)).toBeGreaterThan(0);
          }
        },
      ),
      { numRuns: 150 },
    );
  });

  it('is proved to be none where rules are only written in another way', () => {
    fc.assert(
      fc.property(randomRulebook, fc.constantFrom(...rewritings), (before, edit) => {
        for (const { verdict } of impactOf(before, edited(before, edit)).decisions) expect(verdict).toBe('same');
      }),
      { numRuns: 150 },
    );
  });

  it('of a moved bound is exactly the interval between the old value and the new one', () => {
    const withBound = (value: number): Rulebook => {
      const when: Condition = {
        kind: 'test',
        fact: 'uses',
        test: { kind: 'compare', op: 'at-most', value, shown: `${value} uses` },
      };
      const rule: Rule = {
        id: 'route/few',
        name: 'few',
        when,
        outcome: 'open',
        addsOnly: false,
        because: '',
        cautions: [],
        source: { id: 'x' },
        examples: [],
        layer: 'base',
        place,
      };
      return rulebookOf([
        {
          kind: 'verdict',
          id: 'route',
          title: '',
          stage: '',
          order: 1,
          question: '',
          outcomes: ['open', 'ask', 'shut'],
          say: {},
          otherwise: 'ask',
          rules: [rule],
          gaps: [],
          retired: [],
          place,
        },
      ]);
    };
    const [impact] = impactOf(withBound(10), withBound(8)).decisions;
    expect(impact?.verdict).toBe('changed');
    expect(
      impact?.changes.map(({ before, after, regions }) => [before, after, regions.map(({ where }) => where.map(({ is }) => is))]),
    ).toEqual([['open', 'ask', [['more than 8 uses and up to 10 uses']]]]);
    expect(facts.get('uses')?.type).toBe('count');
  });

  it('is given up, never guessed, where the search may not go on', () => {
    let givenUp = 0;
    fc.assert(
      fc.property(randomRulebook, fc.constantFrom(...changes), (before, edit) => {
        const after = edited(before, edit);
        const exact = impactOf(before, after).decisions;
        for (const [index, { verdict }] of impactOf(before, after, { conflicts: 0, regions: 40 }).decisions.entries()) {
          if (verdict === 'not decided') givenUp += 1;
          else expect(verdict === 'same').toBe(exact[index]?.verdict === 'same');
        }
      }),
      { numRuns: 60 },
    );
    expect(givenUp).toBeGreaterThan(0);
  });
});

describe('strictness', () => {
  it('is refused with a situation that is looser, and proved only where none is', () => {
    const rank = (outcome: string) => ['open', 'ask', 'shut'].indexOf(outcome);
    fc.assert(
      fc.property(
        randomRulebook,
        fc.constantFrom(...changes, ...rewritings),
        fc.array(fc.oneof(completeSituation, partial), { minLength: 12, maxLength: 12 }),
        (before, edit, situations) => {
          const after = edited(before, edit);
          for (const id of ['route', 'later']) {
            const looser = looserIn(id, before, after);
            if (looser === 'not decided') throw new Error('not decided');
            if (looser !== undefined) {
              const [was, is] = [before, after].map((rulebook) => decide(rulebook, id, looser.situation).outcome);
              expect([was, is]).toEqual([looser.before, looser.after]);
              expect(rank(is ?? '')).toBeLessThan(rank(was ?? ''));
            } else
              for (const situation of situations)
                expect(rank(decide(after, id, situation).outcome)).toBeGreaterThanOrEqual(
                  rank(decide(before, id, situation).outcome),
                );
          }
        },
      ),
      { numRuns: 150 },
    );
  });

  it('of a choice is about every program that there could be', () => {
    fc.assert(
      fc.property(
        randomRulebook,
        fc.integer({ min: 0, max: 3 }),
        fc.boolean(),
        fc.array(completeSituation, { minLength: 8, maxLength: 8 }),
        (before, index, retire, situations) => {
          const choice = before.decisions.get('program');
          if (choice?.kind !== 'choice') throw new Error('no choice');
          const rules = choice.rules.flatMap((rule, at) =>
            at !== index ? [rule] : retire ? [] : [{ ...rule, needs: { kind: 'all' as const, of: [] } }],
          );
          const after: Rulebook = { ...before, decisions: new Map(before.decisions).set('program', { ...choice, rules }) };
          const looser = looserIn('program', before, after);
          if (looser === 'not decided') throw new Error('not decided');
          const offered = (rulebook: Rulebook, situation: Situation, program: Situation) => {
            const [machine] = rulebook.machines.values();
            if (machine === undefined) throw new Error('no machine');
            const [only] =
              machine.programs.length > 0
                ? machine.programs
                : [{ id: 'w/p', name: '', machine: 'w', use: '', stages: [], facts: {}, place }];
            const machines = new Map([['w', { ...machine, programs: only === undefined ? [] : [{ ...only, facts: program }] }]]);
            return decide({ ...rulebook, machines }, 'program', situation).offers?.[0]?.meets === true;
          };
          if (looser !== undefined) {
            expect(offered(after, looser.situation, looser.program ?? {})).toBe(true);
            expect(offered(before, looser.situation, looser.program ?? {})).toBe(false);
          } else
            for (const situation of situations)
              for (const { facts: program } of [...before.machines.values()].flatMap(({ programs }) => programs))
                if (offered(after, situation, program)) expect(offered(before, situation, program)).toBe(true);
        },
      ),
      { numRuns: 150 },
    );
  });
});

const place = { file: 'x', line: 1, column: 1 };
