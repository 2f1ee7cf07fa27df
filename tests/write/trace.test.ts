import { toString as textOf } from 'mdast-util-to-string';
import { describe, expect, it } from 'vitest';
import { traceOf } from '../../src/write/trace-of.js';
import { sectionTexts } from '../../src/write/tree/section-texts.js';
import { writeManual } from '../../src/write/write-manual.js';
import { smallLimit, smallRule, smallRulebook, smallVerdict } from './small-rulebook.js';
import { templates } from './templates.js';

const rulebook = smallRulebook();
const write = (book = rulebook) => writeManual({ rulebook: book, templates, tool: '9.9.9' });
const manual = write();
const trace = traceOf(manual, rulebook);

function entries(writing: typeof manual, section: string): string[] {
  return (sectionTexts(writing).get(section)?.blocks ?? []).map(({ text }) => text);
}

describe('the annex that says where everything stands', () => {
  it('leads from rule to page', () => {
    const lines = entries(manual, 'section:trace-rules');
    expect(lines).toContain('What may be washed 5.2, asked in 5.1. steel; aluminum.');
    expect(lines).toContain('Wash by machine 5.1, steps 1 to 2');
    expect(lines).toContain('Clean the filter 6.2; 5.1, 6.1');
    expect(lines).toContain('Washer log A.1; 5.1, 6.2');
    expect(lines).toContain('Longest wait before cleaning 5.1, A.1');
  });

  it('leads from page to rule', () => {
    const lines = entries(manual, 'section:trace-pages');
    expect(lines).toContain(
      '5.1 procedure wash; steps start, look. Names form washer-log; limit holding.longest-wait; task care.filter; question washer.',
    );
    expect(lines).toContain('5.2 question washer; 2 rules.');
  });

  it('leads from source to rule, with the clause and how well it is known', () => {
    const lines = entries(manual, 'section:trace-sources');
    expect(lines).toEqual([expect.any(String), expect.any(String)]);
    expect(lines[1]).toBe('[1] Handbook of cleaning, named in 5.1. Recalled: Wash by machine (5.1; page 3).');
  });

  it('is the home of rules that cannot arise, and names those that were retired', () => {
    const never = smallRule(
      'never',
      { kind: 'test', fact: 'clinic.implants', test: { kind: 'one-of', members: [true] } },
      'keep-out',
    );
    const { rules } = smallVerdict();
    const place = { file: 'x.yaml', line: 1, column: 1 };
    const by = { layer: 'clinic', value: 'retired', source: { id: 'clinic' }, place };
    const verdict = { ...smallVerdict([...rules, never]), retired: [{ rule: smallRule('old', never.when, 'keep-out'), by }] };
    const book = smallRulebook({ decisions: new Map([['washer', verdict]]) });
    const other = write(book);
    expect(other.findings).toEqual([]);
    expect(textOf(other.tree)).toContain('never (cannot arise); old (retired by this clinic)');
    expect(traceOf(other, book).ids['rule:washer/never']).toEqual({
      home: 'section:trace-rules',
      sections: ['section:trace-rules'],
    });
  });
});

describe('the trace', () => {
  it('knows the sections of everything', () => {
    expect(trace.ids['limit:holding.longest-wait']).toEqual({
      home: 'section:limits',
      sections: ['procedure:wash', 'form:washer-log', 'section:limits'],
    });
    expect(trace.ids['rule:washer/steel']).toEqual({ home: 'decision:washer', sections: ['decision:washer'] });
    expect(trace.sources['handbook']).toMatchObject({
      number: 1,
      cited: [{ kind: 'procedure', id: 'wash', at: 'page 3', evidence: 'recalled' }],
    });
  });

  it('knows what each section prints and names', () => {
    const section = trace.sections.find(({ id }) => id === 'procedure:wash');
    expect(section?.number).toBe('5.1');
    expect(section?.prints).toEqual(['procedure:wash', 'step:wash/start', 'step:wash/look']);
    expect(section?.names).toContain('limit:holding.longest-wait');
  });

  it('is the same twice, and differs where a word does', () => {
    expect(traceOf(write(), rulebook)).toEqual(trace);
    const limit = smallLimit('holding.longest-wait', 'Longest wait before cleaning', { value: 8, unit: 'min' });
    const stricter = smallRulebook({ limits: new Map([[limit.id, limit]]) });
    const changed = traceOf(write(stricter), stricter).sections.filter(
      ({ id, digest }) => digest !== trace.sections.find((section) => section.id === id)?.digest,
    );
    expect(changed.map(({ id }) => id)).toEqual(['procedure:wash', 'form:washer-log', 'section:limits']);
  });
});
