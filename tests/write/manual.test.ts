import { toString as textOf } from 'mdast-util-to-string';
import { describe, expect, it } from 'vitest';
import { loadAssets } from '../../src/cli/load-assets.js';
import { modelChoice } from '../../src/write/model/model-choice.js';
import { modelRegister } from '../../src/write/model/register.js';
import { printMarkdown } from '../../src/write/print/print-markdown.js';
import { printers } from '../../src/write/print/printers.js';
import { printedIn } from '../../src/write/tree/printed-in.js';
import { writeManual } from '../../src/write/write-manual.js';
import { smallRule, smallRulebook, smallVerdict } from './small-rulebook.js';
import { templates } from './templates.js';

const rulebook = smallRulebook();
const write = (book = rulebook) => writeManual({ rulebook: book, templates, tool: '9.9.9' });
const manual = write();
const text = textOf(manual.tree);

describe('a manual', () => {
  it('passes its own gate', () => {
    expect(manual.findings).toEqual([]);
  });

  it('has its chapters in the order of the stages, then its annexes', () => {
    expect(manual.sections.filter(({ depth }) => depth === 1).map(({ number, title }) => `${number} ${title}`)).toEqual([
      '1 How to use this manual',
      '2 Scope and responsibilities',
      '3 Cautions that always hold',
      '4 Classes',
      '5 Washing',
      '6 Care',
      '7 Failure',
      'A Forms',
      'B All limits',
      'C Changes and deviations',
      'D Sources',
      'E Where everything stands',
      'F Glossary',
      'G Read and signed',
    ]);
  });

  it('says where each thing is printed', () => {
    const found = printedIn(manual);
    const numbers = (key: string) => found.get(key)?.map(({ number }) => number);
    expect(numbers('rule:washer/steel')).toEqual(['5.2']);
    expect(numbers('limit:holding.longest-wait')).toEqual(['5.1', 'A.1', 'B']);
    expect(numbers('task:care.filter')).toEqual(['5.1', '6.1', '6.2']);
  });

  it('prints the strictest answer first and rules that cannot arise only in the index', () => {
    const never = smallRule(
      'never',
      { kind: 'test', fact: 'clinic.implants', test: { kind: 'one-of', members: [true] } },
      'keep-out',
    );
    const { rules } = smallVerdict();
    const { findings, tree } = write(smallRulebook({ decisions: new Map([['washer', smallVerdict([...rules, never])]]) }));
    expect(findings).toEqual([]);
    const words = textOf(tree);
    expect(words).toMatch(/Keep it out.*Into the washer.*None of these fits: keep it out/s);
    expect(words).toContain('never (cannot arise)');
  });

  it('prints the stricter answer of an open line of the register, and what to ask', () => {
    const { groups } = modelRegister(rulebook);
    const answers = groups.flatMap(({ families }) => families.map(({ id, answers: [first] }) => [id, first]));
    expect(answers).toEqual([
      ['mirror', { open: false, answer: { markdown: 'Into the washer' }, ask: { markdown: '' } }],
      ['gift', { open: true, answer: { markdown: 'Keep it out' }, ask: { markdown: 'What about materials&#63;' } }],
    ]);
  });

  it('answers every situation with the programs of the clinic', () => {
    const choice = rulebook.decisions.get('program');
    if (choice?.kind !== 'choice') throw new Error('the small rulebook has a choice');
    expect(modelChoice(rulebook, new Map(), choice).situations).toEqual([
      { situation: { markdown: 'Soil&#58; light soil' }, programs: null },
      { situation: { markdown: 'Soil&#58; dried soil' }, programs: { markdown: '[Strong](said:washer&#45;1&#47;strong)' } },
    ]);
  });

  it('prints the maker where its interval is stricter, and values of programs as they are', () => {
    expect(text).toContain('every 20 cycles (maker)');
    expect(text).toContain('Wash: 60 °C, 9 minutes');
    expect(text).toContain('Whole duration: 60 minutes');
  });

  it('numbers only cited sources', () => {
    expect(text).toContain('1Handbook of cleaning. An institute, 2020.');
    expect(text).not.toContain('Never cited');
  });

  it('treats what the clinic says as text', () => {
    const clinic = {
      ...rulebook.clinic,
      name: '*Evil* <b>&"\\A", } @page{} </style><script>',
      about: '::: # <img src=x> [](limit:holding.longest-wait)',
    };
    const evil = write(smallRulebook({ clinic }));
    expect(evil.findings).toEqual([]);
    expect(textOf(evil.tree)).toContain('::: # <img src=x> 10 minutes');
  });
});

describe('printers', () => {
  it('give the same bytes twice', async () => {
    const again = write(smallRulebook());
    for (const printer of printers)
      expect(await printer.print(again, loadAssets())).toEqual(await printer.print(manual, loadAssets()));
  });

  it('print only one empty line of a form as Markdown', () => {
    expect(printMarkdown(manual)).toMatch(/\| Day \|/);
  });

  it('Markdown holds no HTML and no marks of ours', () => {
    const markdown = printMarkdown(manual);
    expect(markdown).not.toMatch(/<[a-z/]|\]\((?:id|is|shows|said|limit|break):|^:::/m);
    expect(markdown).toContain('[Washer log (A.1)](#a1-washer-log-washer-1)');
  });
});
