import { describe, expect, it } from 'vitest';
import { checkManual } from '../../src/write/gate/gate.js';
import { buildTree } from '../../src/write/tree/build-tree.js';
import { smallRulebook } from './small-rulebook.js';

const nothing = { decisions: new Map(), tasks: new Map(), procedures: new Map(), forms: new Map(), limits: new Map() };
const empty = smallRulebook(nothing);

function messages(markdown: string, rulebook = empty): string[] {
  return checkManual(buildTree(markdown, rulebook), rulebook).map(({ code, message }) => `${code} ${message}`);
}

describe('the gate', () => {
  it.each([
    ['a stray fence', '::: x', 'E604 stray `::: x` in the manual'],
    ['a reference that is none', 'Wait \\[](limit:Bad id)', 'E604 a reference that is none in `Wait [](limit:Bad id)`'],
    ['a link to elsewhere', '[x](javascript:alert)', 'E603 a link to `javascript:alert` in the manual'],
    ['an image', '![x](y.png)', 'E603 an image from outside in the manual'],
    ['an unknown block', ':::sidebar\nx\n:::', 'E610 unknown directive `sidebar` in a template'],
    ['a skipped level', '# A\n\nx\n\n### B\n\nx', 'E605 the heading `B` skips a level'],
    ['an empty section', '# A\n\n# B\n\nx', 'E607 nothing stands under the heading `A`'],
    [
      'two homes',
      '# A [](id:section:a)\n\n- [](id:limit:x)x\n- [](id:limit:x)y',
      'E606 `limit:x` is at home twice in the manual',
    ],
    ['minutes', 'Wait 10 minutes.', 'E609 `10 minutes` does not come out of the rules'],
    ['a hyphen', 'The 5-minute wait.', 'E609 `5-minute` does not come out of the rules'],
    ['degrees', 'Heat it to 134 °C.', 'E609 `134 °C` does not come out of the rules'],
    ['a share', 'Fill it to 70%.', 'E609 `70%` does not come out of the rules'],
    ['A0', 'Reach A0 600 at least.', 'E609 `A0 600` does not come out of the rules'],
    ['acidity', 'Near pH 7.5 only.', 'E609 `pH 7.5` does not come out of the rules'],
  ])('reports %s', (_, markdown, message) => {
    expect(messages(markdown)).toContain(message);
  });

  it.each([
    ['plain counts', '# A\n\nTwo people look at step 3 of class 5 on page 12, type 6.'],
    ['dates and clauses', '# A\n\nISO 15883-1, 29 CFR 1910.1030(d), July 4, 2026.'],
    ['numbers that the clinic says', '# A\n\n[Mix 5 mL in 2 L.](said:clinic)'],
    ['limits', '# A\n\nWithin [](limit:holding.longest-wait).'],
  ])('lets %s pass', (_, markdown) => {
    const rulebook = smallRulebook({ ...nothing, limits: smallRulebook().limits });
    expect(messages(`${markdown}\n\n- [](id:limit:holding.longest-wait)x`, rulebook)).toEqual([]);
  });

  it('reports all that is in force and not printed', () => {
    expect(messages('# A\n\nx', smallRulebook())).toEqual(
      expect.arrayContaining([
        'E608 the decision `washer` is in force but not printed',
        'E608 the rule `washer/steel` is in force but not printed',
        'E608 the limit `holding.longest-wait` is in force but not printed',
        'E608 the task `care.filter` is in force but not printed',
        'E608 the procedure `wash` is in force but not printed',
        'E608 the step `wash/look` is in force but not printed',
        'E608 the form `washer-log` is in force but not printed',
      ]),
    );
  });

  it('reports a policy, a point and an item of a written program that no page shows', () => {
    const place = { file: 'rules/base/hands.yaml', line: 3, column: 1 };
    const source = { id: 'common-practice' };
    const point = { id: 'hands/wash', name: 'wash', say: 'Wash.', source, layer: 'base', place };
    const links = { procedures: [], tasks: [], decisions: [], forms: [] };
    const policy = { id: 'hands', title: 'Hands', stage: 'washing', order: 50, purpose: 'x', who: [], points: [point], ...links };
    const item = { id: 'a-1', item: 'A.1', section: 'A', text: 'Hands.', source, reprocessing: false, answeredBy: [], place };
    const rulebook = smallRulebook({
      ...nothing,
      policies: new Map([['hands', { ...policy, source, layer: 'base', place }]]),
      requirements: new Map([['a-1', item]]),
    });
    const findings = checkManual(buildTree('# A\n\nx', rulebook), rulebook);
    expect(findings.map(({ message }) => message)).toEqual([
      'the point `hands/wash` is in force but not printed',
      'the policy `hands` is in force but not printed',
      'the requirement `a-1` is in force but not printed',
    ]);
    expect(findings.every((finding) => finding.place === place)).toBe(true);
    const printed = '# A\n\n- [](id:policy:hands)x\n- [](id:point:hands/wash)x\n- [](id:requirement:a-1)x';
    expect(messages(printed, rulebook)).toEqual([]);
  });

  it('does not ask for decisions that this clinic has no use for', () => {
    const rulebook = smallRulebook({ notHere: new Map([['washer', 'What may be washed']]) });
    expect(messages('# A\n\nx', rulebook).filter((message) => message.includes('washer/'))).toEqual([]);
  });

  it('blames the rule that a number stands in', () => {
    const place = { file: 'rules/base/x.yaml', line: 7, column: 3 };
    const rules =
      smallRulebook()
        .decisions.get('washer')
        ?.rules.map((rule) => ({ ...rule, place })) ?? [];
    const verdict = smallRulebook().decisions.get('washer');
    const decisions = new Map(verdict === undefined ? [] : [['washer', { ...verdict, rules }]]);
    const rulebook = smallRulebook({ decisions });
    const built = buildTree('| a |\n| --- |\n| [](id:rule:washer/steel)Wait 3 hours |', rulebook);
    expect(checkManual(built, rulebook)).toContainEqual(expect.objectContaining({ code: 'E609', place }));
  });
});
