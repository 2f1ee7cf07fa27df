import type { RootContent } from 'mdast';
import { describe, expect, it } from 'vitest';
import { loadAssets } from '../../src/cli/load-assets.js';
import { modelFigures } from '../../src/write/figures/model-figures.js';
import { modelMeta } from '../../src/write/model/model-title.js';
import { CannotPrint } from '../../src/write/print/cannot-print.js';
import { printPdf } from '../../src/write/print/print-pdf.js';
import { buildTree } from '../../src/write/tree/build-tree.js';
import { writeManual } from '../../src/write/write-manual.js';
import type { Writing, WritingKind } from '../../src/write/writing.js';
import { readPdf } from './read-pdf.js';
import { smallRulebook } from './small-rulebook.js';
import { templates } from './templates.js';

const rulebook = smallRulebook();
const assets = loadAssets();
const manual = writeManual({ rulebook, templates, tool: '9.9.9' });
const bytes = await printPdf(manual, assets);
const pdf = await readPdf(bytes);

/** A writing of a few lines of Markdown. */
function writing(kind: WritingKind, markdown: string, meta: Partial<Writing['meta']> = {}): Writing {
  const { tree, sections } = buildTree(markdown, rulebook, new Map(), { numbered: kind === 'manual' });
  return { kind, tree, sections, meta: { ...modelMeta(rulebook, '9.9.9'), ...meta } };
}

const read = async (...args: Parameters<typeof writing>) => readPdf(await printPdf(writing(...args), assets));
const pageOf = (text: string) => pdf.pages.findIndex((page, index) => index > 1 && page.text.includes(text)) + 1;

async function findingsOf(made: Writing) {
  const refused: unknown = await printPdf(made, assets).catch((error: unknown) => error);
  if (!(refused instanceof CannotPrint)) throw refused instanceof Error ? refused : new Error('it was printed');
  return refused.findings;
}

describe('a manual as PDF', () => {
  it('names each page, and how many there are', () => {
    expect(pdf.pages.length).toBeGreaterThan(5);
    pdf.pages.forEach(({ text }, index) => expect(text).toContain(`Page ${index + 1} of ${pdf.pages.length}`));
  });

  it('says at the head and foot of its pages what they belong to', () => {
    const { text } = pdf.pages[pageOf('Wash by machine') - 1] ?? { text: '' };
    expect(text).toContain('Small Clinic: Manual');
    expect(text).toContain('5 Washing');
    expect(text).toContain('M-1, version 1.0, in force from December 1, 2026');
  });

  it('lists its sections with the pages they are on', () => {
    const contents = pdf.pages[1]?.text ?? '';
    expect(contents).toContain('Contents');
    for (const { number, title } of manual.sections.slice(0, -1)) {
      const listed = new RegExp(`${number.replace('.', '\\.')} ${title} (\\d+)`).exec(contents)?.[1];
      expect(Number(listed), `${number} ${title}`).toBe(pageOf(`${number} ${title} `));
    }
  });

  it('adds the page to references', () => {
    const text = pdf.pages.map((page) => page.text).join(' ');
    expect(text).toContain(`Washer log (A.1, page ${pageOf('A.1 Washer log')})`);
  });

  it('is tagged, after PDF/UA-1, in the language of the clinic', () => {
    const roles = new Set(pdf.pages.flatMap(({ tags }) => tags.map(({ role }) => role)));
    for (const role of ['Document', 'H1', 'H2', 'P', 'TOC', 'TOCI', 'Link', 'L', 'LI', 'LBody', 'Table', 'THead', 'TH', 'TD'])
      expect(roles, role).toContain(role);
    expect(pdf.tagged).toBe(true);
    expect(pdf.metadata).toMatch(/<pdfuaid:part>1</);
    expect(pdf.language).toBe('en-US');
    expect(pdf.title).toBe('Manual, Small Clinic');
  });

  it('has a bookmark for each section', () => {
    const flat = (list: typeof pdf.bookmarks): string[] => list.flatMap(({ title, items }) => [title, ...flat(items)]);
    const titles = flat(pdf.bookmarks);
    for (const { number, title } of manual.sections) expect(titles).toContain(`${number} ${title}`);
    expect(pdf.bookmarks.length).toBeLessThan(titles.length);
  });

  it('has its fonts inside, and no others', () => {
    expect([...pdf.fonts.keys()].sort()).toEqual(expect.arrayContaining(['SourceSans3-Bold', 'SourceSans3-Regular']));
    for (const [name, inside] of pdf.fonts) {
      expect(name).toMatch(/^(SourceSans3-|DejaVuSans)/);
      expect(inside, name).toBe(true);
    }
  });

  it('is the same bytes each time, in a new compiler and after another writing', async () => {
    const same = async (from = assets) => Buffer.compare(await printPdf(manual, from), bytes) === 0;
    expect(await same({ ...assets })).toBe(true);
    await printPdf(writing('manual', '# One [](id:section:one)\n\nWords.'), assets);
    expect(await same()).toBe(true);
  });

  it('lays wide sheets on their side, one or two a page, full to the foot', async () => {
    const sheet = (size: string) => `::::sheet{layout="landscape" size="${size}"}
:::table{widths="1 2" look="sheet"}
| Day | Wait |
| --- | --- |
${'| | |\n'.repeat(5)}:::
::::`;
    const made = await read(
      'manual',
      `# Forms\n\n## One\n\n${sheet('half')}\n\n## Two\n\n${sheet('half')}\n\n## Three\n\n${sheet('whole')}`,
    );
    expect(made.pages.map(({ width, height }) => [width, height])).toEqual([
      [792, 612],
      [792, 612],
    ]);
    // Each row of each sheet has its line.
    for (const [index, { lines }] of made.pages.entries()) expect(lines).toBeGreaterThan(index === 0 ? 2 * 5 : 5);
    expect(made.pages[0]?.text).toMatch(/One.*Two/);
    expect(made.pages[1]?.text).toContain('Three');
  });

  it('repeats the head of a table, and the name of a group of its rows, on each page', async () => {
    const rows = Array.from({ length: 120 }, (_, index) => `| Row ${index} | x |`).join('\n');
    const made = await read('manual', `# Long\n\n| Head | Other |\n| --- | --- |\n| [](is:group)**Group name** | |\n${rows}`);
    expect(made.pages.length).toBeGreaterThan(2);
    for (const { text } of made.pages) expect(text).toMatch(/Head Other Group name/);
  });

  it('puts footnotes at the foot of the page', async () => {
    const made = await read('manual', '# One\n\nText.[^1]\n\nMore.\n\n[^1]: A small note.');
    expect(made.pages[0]?.text).toMatch(/Text\. ?1.*More\..*A small note\./);
    expect(made.pages[0]?.tags.map(({ role }) => role)).toContain('Note');
  });

  it('shows figures with what they show in words', async () => {
    const [figure] = modelFigures(rulebook).values();
    if (figure === undefined) throw new Error('the small rulebook has no figure');
    const made = writing('manual', '# One\n\nText.');
    made.tree.children.push({ ...figure, type: 'figure' });
    const { pages } = await readPdf(await printPdf(made, assets));
    expect(pages[0]?.text).toContain(figure.caption);
    expect(pages[0]?.tags).toContainEqual({ role: 'Figure', alt: figure.alt });
  });
});

describe('texts in a PDF', () => {
  const hostile = [
    '#panic("no")',
    '$x^2$ and $ y',
    '@reference <label>',
    'back\\slash \\u{41}',
    '*not bold* _not_ `code`',
    '// no comment /* none */',
    '#{ let x = 1 } #include "/etc/passwd"',
    '= no heading',
    '- no -- dash --- here',
    '"plain" \'quotes\' ~ it',
    '{"t":"strong"}',
  ];

  it('are printed as they are, whatever is in them', async () => {
    const made = writing('manual', '# One\n\nWords.', { title: '#panic("title")', clinic: '@clinic <b> $z$' });
    made.tree.children.push(
      ...hostile.map((value): RootContent => ({ type: 'paragraph', children: [{ type: 'text', value }] })),
      { type: 'heading', depth: 2, children: [{ type: 'text', value: '#pagebreak() = A' }] },
      ...hostile.map(
        (value): RootContent => ({
          type: 'table',
          children: ['head', value].map((cell) => ({
            type: 'tableRow',
            children: [{ type: 'tableCell', children: [{ type: 'strong', children: [{ type: 'text', value: cell }] }] }],
          })),
        }),
      ),
    );
    const { pages, title } = await readPdf(await printPdf(made, assets));
    const text = pages.map((page) => page.text).join(' ');
    for (const each of [...hostile, '#pagebreak() = A', '@clinic <b> $z$: #panic("title")'])
      expect(text.split(each).length, each).toBeGreaterThan(hostile.includes(each) ? 2 : 1);
    expect(title).toBe('#panic("title"), @clinic <b> $z$');
  });

  it('are refused with the words around a sign that no font has', async () => {
    const made = writing('manual', '# One [](id:section:one)\n\nSend it to the shop of 東京 Dental Supply in the next street.');
    const findings = await findingsOf(made);
    expect(findings).toEqual([
      expect.objectContaining({
        code: 'E611',
        message: expect.stringMatching(
          /^the text `Send it to the shop of 東京 Dental Supply in the n…` cannot be printed: the fonts have no `東` \(U\+6771\), `京` \(U\+4EAC\)$/,
        ),
        place: { file: 'manual, section 1', line: 1, column: 1 },
      }),
    ]);
  });

  it('stay on the page, however long a word is, and half a sign is shown as an unknown one', async () => {
    const made = writing('manual', '# One\n\nWords.');
    const long = 'x'.repeat(400);
    made.tree.children.push({ type: 'paragraph', children: [{ type: 'text', value: `${long} \ud800` }] });
    const { pages } = await readPdf(await printPdf(made, assets));
    const text = pages[0]?.text.replaceAll(/[\u200b ]/g, '') ?? '';
    expect(text).toContain(long);
    expect(text).toContain('\ufffd');
    expect(pages[0]?.overflows).toBe(false);
  });

  it('are refused in the name of the clinic too', async () => {
    // Named once, though it stands at the head of each page and in the text.
    const findings = await findingsOf(writing('manual', '# One\n\n東 Dental\n\n# Two\n\n東 Dental', { clinic: '東 Dental' }));
    expect(findings.map(({ code, message }) => [code, message.includes('東 Dental')])).toEqual([['E611', true]]);
  });
});

describe('paper', () => {
  const sizes = { a4: [595, 842], letter: [612, 792], a5: [420, 595] };
  const rounded = async (...args: Parameters<typeof writing>) =>
    (await read(...args)).pages.map(({ width, height }) => [Math.round(width), Math.round(height)]);

  it.each(['a4', 'letter'] as const)('of a manual: %s', async (paper) => {
    expect(await rounded('manual', '# One\n\nWords.', { paper })).toEqual([sizes[paper]]);
  });

  it.each(['a4', 'letter', 'a5'] as const)('of cards: %s', async (size) => {
    expect(await rounded('cards', '# One\n\nWords.\n\n# Two\n\nWords.', { size })).toEqual([sizes[size], sizes[size]]);
  });
});

describe('cards as PDF', () => {
  const steps = (count: number) =>
    Array.from({ length: count }, (_, index) => `${index + 1}. Rinse it for the time that the label says.`).join('\n');

  it('take a page each, with their control data at the foot', async () => {
    const { pages } = await read('cards', `# First\n\n${steps(5)}\n\n[](is:foot)In the manual: 4.1\n\n# Second\n\n${steps(5)}`);
    expect(pages.map(({ text }) => /First|Second/.exec(text)?.[0])).toEqual(['First', 'Second']);
    expect(pages[0]?.text).toContain('In the manual: 4.1');
    expect(pages[1]?.text).toContain('M-1, version 1.0, in force from December 1, 2026');
  });

  it('are refused where one does not fit its page', async () => {
    const findings = await findingsOf(writing('cards', `# Short\n\nWords.\n\n# Long\n\n${steps(90)}`, { size: 'a5' }));
    expect(findings.map(({ code, message }) => [code, message])).toEqual([['E612', 'the card `Long` does not fit its page']]);
  });
});

describe('a redline as PDF', () => {
  it('says beside each block what happened to it', async () => {
    const made = writing('redline', '# One\n\nKept.');
    made.tree.children.push(
      {
        type: 'paragraph',
        data: { change: 'inserted' },
        children: [{ type: 'inserted', children: [{ type: 'text', value: 'New.' }] }],
      },
      {
        type: 'paragraph',
        data: { change: 'deleted' },
        children: [{ type: 'deleted', children: [{ type: 'text', value: 'Old.' }] }],
      },
      { type: 'paragraph', data: { change: 'moved' }, children: [{ type: 'text', value: 'Elsewhere.' }] },
    );
    const { pages } = await readPdf(await printPdf(made, assets));
    expect(pages.map(({ text }) => text).join(' ')).toMatch(/Kept\. inserted New\. deleted Old\. moved Elsewhere\./);
  });
});
