import { afterAll, describe, expect, it } from 'vitest';
import { statable } from '../../src/emit/contract.js';
import { rulebookToBundle } from '../../src/emit/json-logic/rulebook-to-json-logic.js';
import { sampleRulebook } from './clinics.js';
import { everyCell, expectSame } from './compare.js';
import { type Evaluator, everyEvaluator } from './evaluators.js';

/** What was compared already: another clinic's decision that is the same in every way need not be run again. */
const compared = new Set<string>();
let situations = 0;

describe.each(['harrow-mills', 'piedra-alta', 'fenny-marlow', 'ellernbrueck'])('the evaluators of %s', (clinic) => {
  const rulebook = sampleRulebook(clinic);
  const { decisions, clinic: stated } = rulebookToBundle(rulebook);
  let evaluators: Evaluator[] | undefined;
  afterAll(() => {
    for (const each of evaluators ?? []) each.close();
  });

  it.each([...rulebook.decisions.keys()])(
    'answer `%s` alike in every cell',
    async (decision) => {
      const read = statable(rulebook, decision).map(({ id }) => [id, stated[id]]);
      const asked = Object.values(decisions[decision]?.asks ?? {}).map((each) => decisions[each]);
      const words = new Set(['because', 'question', 'source']);
      const meaning = JSON.stringify([decisions[decision], asked, read], (key, value) => (words.has(key) ? undefined : value));
      if (compared.has(meaning)) return;
      compared.add(meaning);
      evaluators ??= await everyEvaluator(rulebook);
      const cells = everyCell(rulebook, decision);
      situations += cells.length;
      expect(await expectSame(evaluators, decision, cells)).toBe(0);
    },
    180_000,
  );
});

it('was not about nothing', () => {
  expect(situations).toBeGreaterThan(200_000);
});
