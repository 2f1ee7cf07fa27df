import { describe, expect, it } from 'vitest';
import { loadAssets } from '../../../src/cli/load-assets.js';
import { loadTemplates } from '../../../src/cli/load-manual.js';
import { printDocx } from '../../../src/write/print/print-docx.js';
import { writeCards } from '../../../src/write/write-cards.js';
import { writeForms } from '../../../src/write/write-forms.js';
import { writeManual } from '../../../src/write/write-manual.js';
import type { Writing } from '../../../src/write/writing.js';
import { sampleRulebook } from '../../emit/clinics.js';
import { smallRulebook } from '../small-rulebook.js';
import { templates } from '../templates.js';
import { writingOf } from '../writing-of.js';
import { problemsOf } from './check-docx.js';
import { type Opened, openDocx, paragraphs, part, textOf } from './open-docx.js';
import { all, child, type Element, elementsOf, valueAt } from './read-xml.js';
import { bare, firstMissing, treeLines } from './tree-lines.js';

const print = async (writing: Writing) => openDocx(await printDocx(writing, loadAssets()));
const manual = writeManual({ rulebook: sampleRulebook('harrow-mills'), templates, tool: '9.9.9' });
const opened = await print(manual);
const lines = paragraphs(opened.document).map((each) => bare(textOf(each)));
const styleOf = (paragraph: Element) => valueAt(paragraph, 'w:val', 'w:pPr', 'w:pStyle');
const inStyle = ({ document }: Opened, style: string) => paragraphs(document).filter((each) => styleOf(each) === style);
/** The sections of the document with what stands in them. */
function sectionsOf({ document }: Opened): { layout: string; words: string; properties: Element }[] {
  const body = child(document, 'w:body');
  const sections: { layout: string; words: string; properties: Element }[] = [];
  let words = '';
  for (const block of body === undefined ? [] : elementsOf(body)) {
    words += `${textOf(block)}\n`;
    const [properties] = block.name === 'w:sectPr' ? [block] : all(block, 'w:sectPr');
    if (properties === undefined) continue;
    sections.push({ layout: valueAt(properties, 'w:orient', 'w:pgSz') ?? 'portrait', words, properties });
    words = '';
  }
  return sections;
}

describe('a Word file', () => {
  it('is sound', () => {
    expect(problemsOf(opened)).toEqual([]);
  });

  it('has every heading, rule, step and cell of the manual in order', () => {
    const wanted = treeLines(manual.tree);
    expect(wanted.length).toBeGreaterThan(1000);
    expect(firstMissing(wanted, lines)).toBeUndefined();
  });

  it('counts headings to the numbers that they have', () => {
    const levels = new Map([
      ['Heading1', 0],
      ['Heading2', 1],
      ['Annex1', 0],
      ['Annex2', 1],
    ]);
    let [chapter, section, annex] = [0, 0, 0];
    const counted = paragraphs(opened.document).flatMap((each) => {
      const style = styleOf(each) ?? '';
      const level = levels.get(style);
      if (level === undefined) return [];
      const annexed = style.startsWith('Annex');
      if (level === 1) section += 1;
      else [chapter, annex, section] = [chapter + (annexed ? 0 : 1), annex + (annexed ? 1 : 0), 0];
      const first = annexed ? String.fromCharCode(64 + annex) : String(chapter);
      return [`${level === 0 ? first : `${first}.${section}`} ${textOf(each)}`];
    });
    expect(counted).toEqual(manual.sections.map(({ number, title }) => `${number} ${title}`));
    const styles = all(part(opened.xml, 'word/styles.xml'), 'w:style');
    const linked = [...levels].map(([id]) => {
      const style = styles.find(({ attributes }) => attributes['w:styleId'] === id);
      return style && valueAt(style, 'w:val', 'w:pPr', 'w:numPr', 'w:numId');
    });
    expect(linked[0]).toBe(linked[1]);
    expect(linked[2]).toBe(linked[3]);
    expect(linked.every((number) => number !== undefined)).toBe(true);
  });

  it('lists the headings with their numbers before Word has filled in their pages', () => {
    const entries = ['TOC1', 'TOC2'].flatMap((style) => inStyle(opened, style)).map((each) => bare(textOf(each)));
    expect([...entries].sort()).toEqual(manual.sections.map(({ number, title }) => bare(number + title)).sort());
  });

  it('says on its first page that the PDF counts, and how page numbers are brought up to date', () => {
    const notes = inStyle(opened, 'CopyNote').map((each) => textOf(each));
    expect(notes).toHaveLength(2);
    expect(notes[0]).toContain('The PDF is the controlled copy');
    expect(notes[1]).toContain('F9');
    const places = lines
      .map((line, index) => (notes.some((note) => bare(note) === line) ? index : -1))
      .filter((index) => index >= 0);
    expect(Math.max(...places)).toBeLessThan(lines.indexOf('Contents'));
  });

  it('names the document in the head, and page and status in the foot', () => {
    const heads = [...opened.xml].filter(([name]) => /^word\/header\d/.test(name)).map(([, root]) => textOf(root));
    const feet = [...opened.xml].filter(([name]) => /^word\/footer\d/.test(name)).map(([, root]) => root);
    expect(new Set(heads)).toEqual(new Set(['Harrow Mills Dental: Instrument Reprocessing Manual HMD-IR-01, Version 1.0']));
    for (const foot of feet) {
      expect(textOf(foot)).toMatch(/^In force from December 1, 2026 · .* Page {2}?of $/);
      expect(all(foot, 'w:instrText').map((each) => each.children.join(''))).toEqual(['PAGE', 'NUMPAGES']);
    }
  });

  it('lays sheets on their side that are made for it, and nothing else', () => {
    const sections = sectionsOf(opened);
    const lying = sections.filter(({ layout }) => layout === 'landscape').map(({ words }) => words);
    const wide = manual.sections.filter(({ id }) => /^(?:form|sheet):/.test(id)).map(({ title }) => title);
    const upright = sections.filter(({ layout }) => layout === 'portrait').map(({ words }) => words);
    expect(wide.filter((title) => lying.some((words) => words.includes(title))).length).toBeGreaterThan(8);
    expect(lying.join('')).not.toContain('All limits');
    expect(upright.some((words) => words.includes('Glossary'))).toBe(true);
    for (const { layout, properties } of sections) {
      const [wideness, height] = ['w:w', 'w:h'].map((side) => Number(valueAt(properties, side, 'w:pgSz')));
      expect((wideness ?? 0) > (height ?? 0)).toBe(layout === 'landscape');
    }
  });

  it('repeats the heads of tables and tears no row apart', () => {
    const tables = all(opened.document, 'w:tbl');
    expect(tables.length).toBeGreaterThan(40);
    for (const table of tables) {
      const rows = elementsOf(table).filter(({ name }) => name === 'w:tr');
      const heads = rows.map((row) => all(row, 'w:tblHeader').length > 0);
      expect(heads).toEqual(rows.map((_, index) => index === 0 && rows.length > 1));
      expect(rows.every((row) => all(row, 'w:cantSplit').length === 1)).toBe(true);
    }
  });

  it('holds its figures twice, as SVG and PNG, with words for those who cannot see them', () => {
    const figures = manual.tree.children.filter(({ type }) => type === 'figure');
    const pictures = all(opened.document, 'wp:docPr').map(({ attributes }) => attributes['descr'] ?? '');
    expect(figures.length).toBeGreaterThan(2);
    expect(pictures).toHaveLength(figures.length);
    expect(pictures.every((words) => words.length > 40)).toBe(true);
    const media = Object.keys(opened.parts).filter((name) => name.startsWith('word/media/'));
    expect(media.filter((name) => name.endsWith('.svg'))).toHaveLength(figures.length);
    expect(media.filter((name) => name.endsWith('.png'))).toHaveLength(figures.length);
    expect(all(opened.document, 'asvg:svgBlip')).toHaveLength(figures.length);
  });

  it('has the language of the manual, its fonts inside, and no older way of laying out', () => {
    const defaults = all(part(opened.xml, 'word/styles.xml'), 'w:rPrDefault')[0];
    expect(defaults && valueAt(defaults, 'w:val', 'w:rPr', 'w:lang')).toBe('en-US');
    const [font] = all(part(opened.xml, 'word/fontTable.xml'), 'w:font');
    expect(font?.attributes['w:name']).toBe('Source Sans 3');
    expect(font && elementsOf(font).filter(({ name }) => name.startsWith('w:embed'))).toHaveLength(4);
    const mode = all(part(opened.xml, 'word/settings.xml'), 'w:compatSetting')[0];
    expect(mode?.attributes).toMatchObject({ 'w:name': 'compatibilityMode', 'w:val': '15' });
  });

  it('begins the numbers of steps again for each procedure', () => {
    const used = inStyle(opened, 'ListNumber').map((each) => valueAt(each, 'w:val', 'w:pPr', 'w:numPr', 'w:numId'));
    const numbering = part(opened.xml, 'word/numbering.xml');
    const starts = [...new Set(used)].map((id) => {
      const list = all(numbering, 'w:num').find(({ attributes }) => attributes['w:numId'] === id);
      return list && all(list, 'w:startOverride')[0]?.attributes['w:val'];
    });
    const procedures = manual.sections.filter(({ id }) => id.startsWith('procedure:'));
    expect(starts.length).toBeGreaterThanOrEqual(procedures.length);
    expect(new Set(starts)).toEqual(new Set(['1']));
  });

  it('keeps each caution on one page', () => {
    const blocks = paragraphs(opened.document);
    const keeps = (each: Element, what: string) => {
      const style = all(part(opened.xml, 'word/styles.xml'), 'w:style').find(
        (one) => one.attributes['w:styleId'] === styleOf(each),
      );
      return [each, style].some((one) => one !== undefined && valueAt(one, 'w:val', 'w:pPr', what) !== 'false' && has(one, what));
    };
    const has = (each: Element, what: string) => child(child(each, 'w:pPr') ?? each, what) !== undefined;
    const words = blocks.flatMap((each, index) => (styleOf(each) === 'CautionWord' ? [index] : []));
    expect(words.length).toBeGreaterThan(5);
    for (const start of words) {
      const length = blocks.slice(start + 1).findIndex((each) => styleOf(each) !== 'Caution');
      const box = blocks.slice(start, start + 1 + length);
      expect(box.length).toBeGreaterThan(1);
      expect(box.every((each) => keeps(each, 'w:keepLines'))).toBe(true);
      expect(box.map((each) => keeps(each, 'w:keepNext'))).toEqual(box.map((_, index) => index < box.length - 1));
    }
  });
});

describe('Word files of other writings', () => {
  it('print the forms with sheets and filled examples, and the cards', { timeout: 120_000 }, async () => {
    const input = { rulebook: sampleRulebook('harrow-mills'), templates: loadTemplates(), tool: '9.9.9' };
    for (const writing of [writeForms(input), writeCards({ ...input, manual })]) {
      const file = await print(writing);
      const found = paragraphs(file.document).map((each) => bare(textOf(each)));
      expect(problemsOf(file)).toEqual([]);
      expect(firstMissing(treeLines(writing.tree), found)).toBeUndefined();
      expect(textOf(file.document)).not.toContain('F9');
    }
  });

  it('are in the language and on the paper of the clinic', async () => {
    const german = writeManual({ rulebook: sampleRulebook('ellernbrueck'), templates, tool: '9.9.9' });
    const file = await print(german);
    const sizes = all(file.document, 'w:pgSz').map(({ attributes }) => [attributes['w:w'], attributes['w:h']].sort().join());
    expect(problemsOf(file)).toEqual([]);
    expect(
      firstMissing(
        treeLines(german.tree),
        paragraphs(file.document).map((each) => bare(textOf(each))),
      ),
    ).toBeUndefined();
    expect(new Set(sizes)).toEqual(new Set(['11906,16838']));
    expect(all(part(file.xml, 'word/styles.xml'), 'w:lang')[0]?.attributes['w:val']).toBe(german.meta.language);
  });

  it('number headings in words where counting gives others', async () => {
    const { tree, ...rest } = writingOf('# One\n\nx\n\n# Two\n\ny');
    const [first, , second] = tree.children;
    if (first?.type !== 'heading' || second?.type !== 'heading') throw new Error('two headings');
    first.data = { ...first.data, number: '4.2' };
    second.data = { ...second.data, number: 'B.1' };
    const sections = rest.sections.map((section, index) => ({ ...section, number: ['4.2', 'B.1'][index] ?? '' }));
    const file = await print({ ...rest, tree, sections });
    expect(problemsOf(file)).toEqual([]);
    expect(paragraphs(file.document).map((each) => textOf(each))).toEqual(expect.arrayContaining(['4.2 One', 'B.1 Two']));
    expect(all(part(file.xml, 'word/styles.xml'), 'w:numPr')).toEqual([]);
  });

  it('do not number headings that have no number', async () => {
    const { tree, ...rest } = writingOf('# Notice\n\nx');
    for (const node of tree.children) if (node.type === 'heading') node.data = {};
    const file = await print({ ...rest, kind: 'notice', tree, sections: [] });
    const [heading] = inStyle(file, 'Heading1');
    expect(problemsOf(file)).toEqual([]);
    expect(heading && valueAt(heading, 'w:val', 'w:pPr', 'w:numPr', 'w:numId')).toBe('0');
    expect(textOf(file.document)).toContain('The PDF is the controlled copy');
  });

  it('track what a redline puts in and takes out', async () => {
    const writing = writingOf('# Wait\n\nWait 10.\n\nNew.\n\nOld.\n\nMoved.\n\n- item\n\n| A | B |\n| - | - |\n| 1 | 2 |', {
      kind: 'redline',
    });
    const [, mixed, fresh, old, moved, list, table] = writing.tree.children;
    if (mixed?.type !== 'paragraph' || list?.type !== 'list' || table?.type !== 'table') throw new Error('the pieces');
    const text = (value: string) => ({ type: 'text' as const, value });
    mixed.children = [
      text('Wait '),
      { type: 'deleted', children: [text('10')] },
      { type: 'inserted', children: [{ type: 'strong', children: [text('8')] }] },
      text('.'),
    ];
    for (const [node, change] of [
      [fresh, 'inserted'],
      [old, 'deleted'],
      [moved, 'moved'],
      [list.children[0], 'inserted'],
      [table.children[1], 'deleted'],
    ] as const)
      if (node !== undefined) node.data = { ...node.data, change };
    const file = await print(writing);
    expect(problemsOf(file)).toEqual([]);
    const words = (name: string) =>
      all(file.document, name)
        .map((each) => textOf(each))
        .filter((each) => each !== '');
    expect(words('w:ins')).toEqual(['8', 'New.', 'item']);
    expect(words('w:del')).toEqual(['10', 'Old.', '1', '2']);
    expect(textOf(file.document)).toContain('[moved] Moved.');
    const dates = [...all(file.document, 'w:ins'), ...all(file.document, 'w:del')].map(({ attributes }) => attributes);
    expect(new Set(dates.map((each) => `${each['w:author']}, ${each['w:date']}`))).toEqual(
      new Set(['Small Clinic, 2026-12-01T00:00:00Z']),
    );
    expect(all(file.document, 'w:trPr').some((each) => child(each, 'w:del') !== undefined)).toBe(true);
  });

  it('have footnotes, boxes to tick, nested lists, links and quotations', async () => {
    const file = await print(
      writingOf(
        '# One\n\nx[^1] and [web](https://example.org/?a=1&b=2)\n\n[^1]: A note.\n\n- [ ] open\n- [x] done\n  1. deep\n\n> quoted\n\n---',
      ),
    );
    expect(problemsOf(file)).toEqual([]);
    expect(all(file.document, 'w:footnoteReference')).toHaveLength(1);
    expect(textOf(part(file.xml, 'word/footnotes.xml'))).toContain('A note.');
    const words = paragraphs(file.document).map((each) => textOf(each));
    expect(words).toEqual(expect.arrayContaining(['☐ open', '☑ done', 'deep', 'quoted']));
    const targets = elementsOf(part(file.xml, 'word/_rels/document.xml.rels')).map(({ attributes }) => attributes['Target']);
    expect(targets).toContain('https://example.org/?a=1&b=2');
  });

  it('refuse what they cannot print', async () => {
    const writing = writingOf('# One\n\nx');
    writing.tree.children.push({ type: 'html', value: '<b>' });
    await expect(printDocx(writing, loadAssets())).rejects.toThrow('no Word for a block of type html');
  });

  it('print whatever a clinic says as text', async () => {
    const nasty = '</w:t><w:br/>&amp; ]]> <!-- --> "\' $& {page} \u0001\ud800\uffff\u202e Ω 漢字 😀\tend';
    const clinic = { ...smallRulebook().clinic, name: nasty, about: nasty };
    clinic.document = { ...clinic.document, title: nasty, number: nasty };
    const writing = writeManual({ rulebook: smallRulebook({ clinic }), templates, tool: nasty });
    const file = await print({ ...writing, meta: { ...writing.meta, clinic: nasty, title: nasty } });
    expect(problemsOf(file)).toEqual([]);
    expect(textOf(file.document)).toContain('</w:t><w:br/>&amp; ]]> <!-- --> "\' $& {page}');
    expect(textOf(part(file.xml, 'word/header1.xml'))).toContain('Ω 漢字 😀 end');
  });

  it('give each anchor a bookmark of its own, however alike their names are', async () => {
    const long = 'a'.repeat(60);
    const writing = writingOf(
      `# One [](id:section:${long}-1)\n\nx\n\n# Two [](id:section:${long}-2)\n\ny\n\n# Three [](id:section:${long.toUpperCase()}-1)\n\nz`,
    );
    writing.tree.children.push({
      type: 'paragraph',
      children: writing.sections.map(({ anchor, title }) => ({
        type: 'reference',
        scheme: 'section',
        target: title,
        anchor,
        children: [{ type: 'text', value: title }],
      })),
    });
    const file = await print(writing);
    expect(problemsOf(file)).toEqual([]);
    expect(new Set(all(file.document, 'w:hyperlink').map(({ attributes }) => attributes['w:anchor'])).size).toBe(3);
  });
});

describe('the same writing', () => {
  const small = writeManual({ rulebook: smallRulebook(), templates, tool: '9.9.9' });

  it('gives the same bytes twice, whatever was printed between, and in any time zone', async () => {
    const before = process.env['TZ'];
    const once = await printDocx(small, loadAssets());
    await printDocx(writingOf('# One\n\n[](section:one) x'), loadAssets());
    const offsets = new Set<number>();
    try {
      for (const zone of ['Asia/Tokyo', 'America/Los_Angeles']) {
        process.env['TZ'] = zone;
        offsets.add(new Date(2026, 0, 1).getTimezoneOffset());
        expect(Buffer.compare(await printDocx(small, loadAssets()), once)).toBe(0);
      }
    } finally {
      if (before === undefined) delete process.env['TZ'];
      else process.env['TZ'] = before;
    }
    expect(offsets.size).toBe(2);
  });

  it('carries its own date and no other', async () => {
    const { xml } = openDocx(await printDocx(small, loadAssets()));
    const core = part(xml, 'docProps/core.xml');
    const dates = elementsOf(core).filter(({ name }) => name.startsWith('dcterms:'));
    expect(dates.map(({ children }) => children.join(''))).toEqual(['2026-12-01T00:00:00Z', '2026-12-01T00:00:00Z']);
  });
});
