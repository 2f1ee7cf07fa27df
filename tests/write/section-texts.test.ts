import { describe, expect, it } from 'vitest';
import { buildTree } from '../../src/write/tree/build-tree.js';
import { sectionTexts } from '../../src/write/tree/section-texts.js';
import { writeManual } from '../../src/write/write-manual.js';
import { smallRulebook } from './small-rulebook.js';
import { templates } from './templates.js';

const rulebook = smallRulebook();

function textsOf(markdown: string) {
  return sectionTexts(buildTree(markdown, rulebook));
}

describe('the texts of sections', () => {
  it('are keyed by what each block is at home for, and by kind and number where nothing marks it', () => {
    const texts = textsOf(
      [
        '# Washing [](id:section:washing)',
        '[](is:lead)It comes first.',
        ':::caution\nHot.\n\nSharp.\n:::',
        '1. [](id:step:wash/start)**Caution.** Hot.\n\n   Start [](machine:washer).\n\n2. [](id:step:wash/look)Look.',
        '| Limit | Value |\n| --- | --- |\n| [](id:limit:holding.longest-wait)Wait | 10 |\n| | |',
        '### Filter [](id:task:care.filter)\n\nEach day.\n\n1. Rinse it.\n2. Dry it.',
        '## Next [](id:section:next)\n\nMore.',
      ].join('\n\n'),
    );
    expect([...texts.keys()]).toEqual(['section:washing', 'section:next']);
    expect(texts.get('section:washing')).toMatchObject({ number: '1', title: 'Washing' });
    expect(texts.get('section:washing')?.blocks.map(({ key, text }) => [key, text])).toEqual([
      ['lead-1', 'It comes first.'],
      ['caution-1', 'Hot.'],
      ['caution-2', 'Sharp.'],
      ['step:wash/start', 'Caution. Hot.\nStart Washer 1.'],
      ['step:wash/look', 'Look.'],
      ['row-1', 'Limit | Value'],
      ['limit:holding.longest-wait', 'Wait | 10'],
      ['task:care.filter', 'Filter\nEach day.\nRinse it.\nDry it.'],
    ]);
    expect(texts.get('section:next')?.blocks).toEqual([{ key: 'paragraph-1', text: 'More.', unnumbered: 'More.' }]);
  });

  it('tell renumbering from a change', () => {
    const before = textsOf('# A\n\nSee [](section:b) and [](source:handbook).\n\n# B [](id:section:b)\n\nx');
    const after = textsOf('# A\n\nSee [](section:b) and [](source:handbook).\n\n# New\n\nx\n\n# B [](id:section:b)\n\nx');
    const [was, is] = [before, after].map((texts) => texts.get('section:number-1')?.blocks[0]);
    expect(was).toMatchObject({ text: 'See B (2) and [1].', unnumbered: 'See B and [handbook].' });
    expect(is).toMatchObject({ text: 'See B (3) and [1].', unnumbered: 'See B and [handbook].' });
  });

  it('name each block of a manual once in its section', () => {
    const texts = sectionTexts(writeManual({ rulebook, templates, tool: '9.9.9' }));
    for (const { blocks } of texts.values()) {
      const keys = blocks.map(({ key }) => key);
      expect(new Set(keys).size).toBe(keys.length);
    }
    expect(texts.get('procedure:wash')?.blocks.map(({ key }) => key)).toEqual([
      'lead-1',
      'opening-1',
      'opening-2',
      'opening-3',
      'opening-4',
      'caution-1',
      'step:wash/start',
      'step:wash/look',
      'done-1',
      'done-2',
    ]);
  });
});
