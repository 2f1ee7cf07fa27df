import { expect, it } from 'vitest';
import { checkAnswers } from '../../src/check/check-answers.js';
import type { Condition } from '../../src/link/rulebook.js';
import { facts, rulebookOf } from '../decide/random-rulebook.js';

const place = { file: 'route.yaml', line: 3, column: 1 };
const when: Condition = {
  kind: 'all',
  of: [{ kind: 'test', fact: 'hollow', test: { kind: 'one-of', members: [true] } }],
};
const rulebook = rulebookOf([
  {
    kind: 'verdict',
    id: 'route',
    title: 'Route',
    stage: 'washing',
    order: 50,
    question: 'Which route?',
    outcomes: ['open', 'shut'],
    say: { open: 'open', shut: 'shut' },
    otherwise: 'shut',
    rules: [
      {
        id: 'route/hollow',
        name: 'hollow',
        when,
        outcome: 'shut',
        addsOnly: false,
        because: 'it is hollow',
        cautions: [],
        source: { id: 'common-practice' },
        examples: [],
        layer: 'base',
        place,
      },
    ],
    gaps: [{ when, because: 'none is left', layer: 'base', place }],
    retired: [],
    place,
  },
]);

it('warns of what the search gave up, W510, and of nothing that it does not know', () => {
  expect(facts.has('hollow')).toBe(true);
  const findings = checkAnswers(rulebook, { conflicts: 0, regions: 1 });
  expect(findings.map(({ code, message }) => `${code} ${message}`)).toEqual(
    [
      'gaps',
      'intended gaps',
      'whether there is the marked gap 1',
      'whether `route/hollow` is ever true',
      'whether `route/hollow` ever gives the outcome',
    ].map((what) => `W510 not decided within the limit of the search: ${what} of \`route\``),
  );
});

it('finds the gap and the mark of no gap when it may search', () => {
  expect(checkAnswers(rulebook).map(({ code }) => code)).toEqual(['W505', 'W506']);
});
