import { expect, it } from 'vitest';
import { rulebookToBundle } from '../../src/emit/json-logic/rulebook-to-json-logic.js';
import { selfCheck } from '../../src/emit/json-logic/self-check.js';
import { rulebookToSchema } from '../../src/emit/schema.js';
import type { Condition, Fact, Rule, Rulebook } from '../../src/link/rulebook.js';
import { rulebookOf } from '../decide/random-rulebook.js';
import { expectSame } from './compare.js';
import { everyEvaluator } from './evaluators.js';

/** Texts that would do harm if they got into code as anything but data. */
const hostile = [
  `'; DROP TABLE "facts"; --`,
  `"); DROP TABLE facts; --`,
  '*/ DELETE FROM "facts"; /*',
  `\`\${globalThis.harmed = true}\``,
  '"+(globalThis.harmed=true)+"',
  '</script><script>harmed=true</script>',
  'a\\u0027 || 1=1',
  '__proto__',
  'constructor',
  'line\nbreak \u2028 and \u2029 end',
];

const place = { file: 'x', line: 1, column: 1 };

/** A rulebook in which every id, member, word and question is a hostile text. */
function hostileRulebook(text: string): Rulebook {
  const fact = (id: string, type: Fact['type'], members: string[]): Fact => ({
    id,
    label: text,
    type,
    members,
    statedBy: 'person',
    question: text,
  });
  const name = (suffix: string) => `${text}-${suffix}`;
  const member = text.replaceAll(',', '');
  const facts = new Map(
    [
      fact(name('kind'), 'enum', [member, 'b']),
      fact(name('set'), 'set', [member, 'b']),
      fact(name('yes'), 'boolean', []),
      { ...fact(name('told'), 'answer', [member, 'shut']), decision: name('first') },
    ].map((each) => [each.id, each]),
  );
  const rule = (decision: string, id: string, when: Condition, outcome: string): Rule => ({
    id: `${decision}/${id}`,
    name: id,
    when,
    outcome,
    addsOnly: false,
    because: text,
    instead: text,
    cautions: [text],
    source: { id: text, at: text },
    examples: [],
    layer: 'base',
    place,
  });
  const verdict = (id: string, rules: Rule[]) => ({
    kind: 'verdict' as const,
    id,
    title: text,
    stage: text,
    order: 1,
    question: text,
    outcomes: [member, 'shut'],
    say: { [member]: text, shut: text },
    otherwise: 'shut',
    rules,
    gaps: [],
    retired: [],
    place,
  });
  const test = (id: string, kind: 'one-of' | 'any-of', each: string): Condition => ({
    kind: 'test',
    fact: id,
    test: { kind, members: [each] },
  });
  const rulebook = rulebookOf([
    verdict(name('first'), [
      rule(name('first'), 'r0', test(name('kind'), 'one-of', member), member),
      rule(name('first'), 'r1', test(name('set'), 'any-of', member), 'shut'),
    ]),
    verdict(name('second'), [rule(name('second'), 'r0', test(name('told'), 'one-of', member), member)]),
  ]);
  return {
    ...rulebook,
    facts,
    clinic: { ...rulebook.clinic, name: text, document: { ...rulebook.clinic.document, title: text } },
  };
}

it.each(hostile)('%j is data in every evaluator', async (text) => {
  const rulebook = hostileRulebook(text);
  const member = text.replaceAll(',', '');
  const evaluators = await everyEvaluator(rulebook);
  const [kind, set, told] = [`${text}-kind`, `${text}-set`, `${text}-told`];
  const situations = [
    {},
    { [kind]: member },
    { [kind]: 'b', [set]: [] },
    { [kind]: member, [set]: [member, 'b'] },
    { [kind]: member, [set]: ['b'], [told]: member },
    { [told]: 'shut' },
    { [kind]: 'neither' },
  ];
  for (const decision of rulebook.decisions.keys()) await expectSame(evaluators, decision, situations);
  for (const each of evaluators) each.close();
  expect(Reflect.get(globalThis, 'harmed')).toBe(undefined);
  expect(JSON.parse(rulebookToSchema(rulebook)).$defs.facts.properties[kind].title).toBe(text);
});

it('a bundle that was changed by hand is noticed: E406', () => {
  const bundle = rulebookToBundle(hostileRulebook('plain'));
  expect(selfCheck(bundle, 'evaluator.json')).toEqual([]);
  const [decision] = Object.values(bundle.decisions);
  if (decision?.rules[0] === undefined) throw new Error('no rule');
  decision.rules[0].certain = true;
  expect(selfCheck(bundle, 'evaluator.json').map(({ code }) => code)).toContain('E406');
});
