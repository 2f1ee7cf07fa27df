import { toString as textOf } from 'mdast-util-to-string';
import { describe, expect, it } from 'vitest';
import { compareQuantities, parseQuantity } from '../../src/measure/quantity.js';
import { modelGlossary } from '../../src/write/model/model-annexes.js';
import { modelForms } from '../../src/write/model/model-forms.js';
import { modelLogSheets } from '../../src/write/model/model-log-sheets.js';
import { printMarkdown } from '../../src/write/print/print-markdown.js';
import { sayMoments } from '../../src/write/text/say-moment.js';
import { writeForms } from '../../src/write/write-forms.js';
import { allTemplates as templates } from './all-templates.js';
import { clinicCalled, shippedClinics } from './in-each-region.js';
import { smallRulebook } from './small-rulebook.js';

const write = (rulebook: Parameters<typeof writeForms>[0]['rulebook']) => writeForms({ rulebook, templates, tool: '9.9.9' });

describe.each([...shippedClinics])('the log forms of %s', (_, rulebook) => {
  const forms = write(rulebook);

  it('pass the gate', () => {
    expect(forms.findings).toEqual([]);
    expect(forms.kind).toBe('forms');
  });

  it('hold a filled example of each form, with a line on which something went wrong', () => {
    const { sheets, examples } = modelLogSheets(rulebook);
    expect(new Set(sheets.map(({ id }) => id))).toEqual(new Set(rulebook.forms.keys()));
    expect(examples.map(({ id }) => id)).toEqual([...rulebook.forms.keys()]);
    for (const { sample = [] } of rulebook.forms.values()) expect(sample.filter(({ fault }) => fault).length).toBe(1);
  });

  it('keep to the limits wherever nothing went wrong', () => {
    for (const { id, columns, sample = [] } of rulebook.forms.values())
      for (const { cells, fault } of sample)
        for (const { id: column, unit, limit: name } of columns) {
          const limit = rulebook.limits.get(name ?? '');
          const text = cells[column];
          if (limit === undefined || text === undefined || fault === true) continue;
          const read = parseQuantity(unit === undefined ? text : `${text} ${unit}`);
          if (!read.ok) continue;
          const side = compareQuantities(read.value, limit.value);
          expect(limit.stricter === 'lower' ? side <= 0 : side >= 0, `${id}: ${text} in ${column}`).toBe(true);
        }
  });
});

describe('a sheet', () => {
  const { sheets, examples } = modelLogSheets(clinicCalled('piedra-alta'));

  it('names its machine, and takes a page of its own', () => {
    const washers = sheets.filter(({ id }) => id === 'washer-log');
    expect(washers.map(({ machine }) => machine?.markdown)).toEqual(['[Washer 1](said:clinic)', '[Washer 2](said:clinic)']);
    expect(washers.every(({ serial, rows }) => serial !== null && rows.length === 20)).toBe(true);
    const small = modelForms(clinicCalled('piedra-alta')).find(({ id }) => id === 'hand-cleaning-log');
    expect(small?.rows.length).toBe(7);
    expect(sheets.find(({ id }) => id === 'hand-cleaning-log')?.rows.length).toBe(16);
  });

  it('asks for the week, the month, or from when to when', () => {
    const period = (id: string) => sheets.find((sheet) => sheet.id === id);
    expect(period('sterilizer-log')).toMatchObject({ week: true, month: false });
    expect(period('washer-log')).toMatchObject({ week: false, month: true });
    expect(period('review-record')).toMatchObject({ week: false, month: false });
  });

  it('numbers the days of a month', () => {
    const days = sheets.find(({ id }) => id === 'maintenance-log')?.rows.map(([day]) => day);
    expect(days?.slice(0, 2)).toEqual(['1', '2']);
    expect(days?.at(-1)).toBe('31');
  });

  it('has the columns of its machine, in the example too', () => {
    for (const { columns, rows } of [...sheets, ...examples])
      expect(rows.every((row) => row.length === columns.length)).toBe(true);
  });
});

describe('a filled example', () => {
  const rulebook = clinicCalled('harrow-mills');
  const printed = printMarkdown(write(rulebook));

  it('says that it is none of the records', () => {
    expect(printed.match(/\*\*Example, not a record\.\*\*/g)?.length).toBe(rulebook.forms.size);
    expect(printed).toContain('| Mar 2, 2026 | 313 | 1:15\u00a0PM |');
  });

  it('is in no annex of the manual, and explains no word there', () => {
    expect(JSON.stringify(modelForms(rulebook))).not.toContain('F12 drain');
    const [log] = rulebook.forms.values();
    if (log === undefined) throw new Error('no form');
    const terms = new Map([
      ['zeppelin', { id: 'zeppelin', label: 'zeppelin', definition: 'It flies.', glossary: true, place: log.place }],
    ]);
    const sample = [{ cells: { date: 'A zeppelin' } }];
    const glossaryOf = (form: typeof log) => modelGlossary({ ...rulebook, terms, forms: new Map([[form.id, form]]) });
    expect(glossaryOf({ ...log, sample })).toEqual([]);
    expect(glossaryOf({ ...log, purpose: 'A zeppelin' }).map(({ id }) => id)).toEqual(['zeppelin']);
  });

  it('is spelled as the region spells', () => {
    expect(textOf(write(clinicCalled('fenny-marlow')).tree)).toContain('Steriliser, load 0398');
  });

  it('is left out where a form has none', () => {
    const forms = write(smallRulebook());
    expect(forms.findings).toEqual([]);
    expect(forms.sections.map(({ title }) => title)).toEqual(['Blank sheets', 'Washer log: Washer 1']);
  });
});

describe('days and times', () => {
  it('are written as a language writes them', () => {
    expect(sayMoments('2026-03-02, 14:10', 'en-US')).toBe('Mar 2, 2026, 2:10\u00a0PM');
    expect(sayMoments('told at 08:05 on 2026-03-02', 'en-GB')).toBe('told at 08:05 on 2 Mar 2026');
  });

  it('stay as they are where there is no such day', () => {
    expect(sayMoments('2026-13-45 and 25:61, lot 25-K114', 'en-GB')).toBe('2026-13-45 and 25:61, lot 25-K114');
  });
});
