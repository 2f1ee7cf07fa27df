import { describe, expect, it } from 'vitest';
import { checkManual } from '../../src/write/gate/gate.js';
import { buildTree } from '../../src/write/tree/build-tree.js';
import { smallRulebook } from './small-rulebook.js';

const nothing = { decisions: new Map(), tasks: new Map(), procedures: new Map(), forms: new Map(), limits: new Map() };
const empty = smallRulebook(nothing);

const here = { file: 'rules/base/x.yaml', line: 1, column: 1 };
const rulesFile = ['- id: steel', '  because: It waits', '    3 hours.', '- id: aluminum', '  because: 3 hours.'].join('\n');

function messages(markdown: string, rulebook = empty): string[] {
  return checkManual(buildTree(markdown, rulebook), rulebook).map(({ code, message }) => `${code} ${message}`);
}

describe('the gate', () => {
  it('names the line of a template', () => {
    const templates = new Map([['manual/x', '# A\n\n- **Never**  reach into it.']]);
    const markdown = '# A\n\n- **Never** reach into it.';
    const [finding] = checkManual(buildTree(markdown, empty), empty, { templates });
    expect(finding).toMatchObject({ code: 'E613', place: { file: 'templates/manual/x.hbs', line: 3, column: 5 } });
  });

  it('wants a mark for what a template says inside of a rule', () => {
    const templates = new Map([['manual/x', 'Never reach into the bath.']]);
    const markdown = '# A\n\n- [](id:rule:washer/steel)Never reach into the bath.';
    const found = checkManual(buildTree(markdown, empty), empty, { templates });
    expect(found.map(({ code }) => code)).toEqual(['E613']);
    const terms = new Map([['bath', { id: 'bath', label: 'bath', definition: markdown, glossary: true, place: here }]]);
    const same = smallRulebook({ ...nothing, terms });
    expect(checkManual(buildTree(markdown, same), same, { templates })).toEqual([]);
  });

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
    ['a unit across marks', 'Wait 10 **minutes**.', 'E609 `10 minutes` does not come out of the rules'],
    ['a number in words', 'Wait ten minutes.', 'E609 `ten minutes` does not come out of the rules'],
    ['half an hour', 'Wait half an hour.', 'E609 `half an hour` does not come out of the rules'],
    ['how often', 'Rinsed twice a week.', 'E609 `twice a week` does not come out of the rules'],
    ['each turn', 'Rinsed every month.', 'E609 `every month` does not come out of the rules'],
    ['an adverb of time', 'It is tested weekly.', 'E609 `weekly` does not come out of the rules'],
    ['a stretch of time', 'Within an hour.', 'E609 `Within an hour` does not come out of the rules'],
    ['time after', 'It comes a year after that.', 'E609 `a year after` does not come out of the rules'],
    [
      'an order without a rule',
      '# A\n\nIt is hot. Never touch the door.',
      'E613 `Never touch the door.` tells somebody to do something, and no rule or step stands behind it',
    ],
    [
      'an order behind a condition',
      '# A\n\nIf it is hot, wait for the lead.',
      'E613 `If it is hot, wait for the lead.` tells somebody to do something, and no rule or step stands behind it',
    ],
    ['a section that prints nothing', '# A\n\n:::columns\n:::\n\n# B\n\nx', 'E607 nothing stands under the heading `A`'],
  ])('reports %s', (_, markdown, message) => {
    expect(messages(markdown)).toContain(message);
  });

  it.each([
    ['plain counts', '# A\n\nTwo people look at step 3 of class 5 on page 12, type 6.'],
    ['dates and clauses', '# A\n\nISO 15883-1, 29 CFR 1910.1030(d), July 4, 2026.'],
    ['numbers that the clinic says', '# A\n\n[Mix 5 mL in 2 L.](said:clinic)'],
    ['limits', '# A\n\nWithin [](limit:holding.longest-wait).'],
    ['the unit that a limit counts in', '# A\n\nNo more than [](limit:holding.longest-wait) in an hour.'],
    ['names of tests and days of use', '# A\n\nThe weekly test, a second box, each day of use, one cycle, three times.'],
    ['orders of a rule', '# A\n\n- [](id:rule:washer/steel)Wait until it is cool.'],
    ['orders of a task', '# A\n\n## B\n\nx\n\n### Filter [](id:task:care.filter)\n\nTake it out.'],
    ['guidance of a template', '# A\n\n[](id:guide:reading)Read it from the top.'],
    ['orders of the clinic', '# A\n\n[Fill it to the mark.](said:clinic)'],
    ['labels', '# A\n\n| Write down | Load number |\n| --- | --- |\n| x | y |'],
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
    const textOf = (file: string) => (file === place.file ? `${'\n'.repeat(6)}  ${rulesFile}` : undefined);
    expect(checkManual(built, rulebook, { templates: new Map(), textOf })).toContainEqual(
      expect.objectContaining({ code: 'E609', place: { file: place.file, line: 9, column: 5 } }),
    );
  });
});
