import { toString as textOf } from 'mdast-util-to-string';
import { describe, expect, it } from 'vitest';
import { checkManual } from '../../src/write/gate/gate.js';
import { buildTree } from '../../src/write/tree/build-tree.js';
import { smallRulebook } from './small-rulebook.js';

const rulebook = smallRulebook({ notHere: new Map([['oil', 'Oil the handpiece']]) });

const homes =
  '# One [](id:section:washing)\n\n## Wash [](id:procedure:wash)\n\nx\n\n### Filter [](id:task:care.filter)\n\nx\n\n## Log [](id:form:washer-log)\n\nx';

function fill(reference: string) {
  const { tree } = buildTree(`${reference}\n\n${homes}`, rulebook);
  return textOf(tree.children[0] ?? tree);
}

describe('references', () => {
  it.each([
    ['[](limit:holding.longest-wait)', '10 minutes'],
    ['[](every:care.filter)', 'every 20 cycles'],
    ['[](procedure:wash)', 'Wash by machine (1.1)'],
    ['[](procedure:oil)', 'Oil the handpiece'],
    ['[](decision:washer)', 'What may be washed'],
    ['[](task:care.filter)', 'Clean the filter (1.1)'],
    ['[](form:washer-log)', 'Washer log (1.2)'],
    ['[](term:dried)', 'dried soil'],
    ['[](role:lead)', 'Ana Ruiz or Ben Li (lead)'],
    ['[](role:infection-lead)', 'the infection control lead'],
    ['[](machine:washer)', 'Washer 1'],
    ['[](zone:dirty-side)', 'Back room (dirty side)'],
    ['[](contact:emergency)', 'Emergency, 911'],
    ['[](source:handbook)', '[1]'],
    ['[](source:common-practice)', 'practice'],
    ['[](section:washing)', 'One (1)'],
  ])('%s prints %s', (reference, words) => {
    expect(fill(reference)).toBe(words);
  });

  it('names the nearest where an id is unknown', () => {
    const built = buildTree(`[](limit:holding.longest-wai)\n\n${homes}`, rulebook);
    expect(checkManual(built, rulebook)).toContainEqual({
      code: 'E602',
      message: 'unknown limit `holding.longest-wai` in the manual',
      help: 'did you mean `holding.longest-wait`?',
      place: { file: 'manual', line: 1, column: 1 },
    });
  });
});
