import { createHash } from 'node:crypto';
import { describe, expect, it } from 'vitest';
import { loadAssets } from '../../src/cli/load-assets.js';
import { modelFigures } from '../../src/write/figures/model-figures.js';
import { renameFont } from '../../src/write/print/html/rename-font.js';
import { printHtml } from '../../src/write/print/print-html.js';
import { writeManual } from '../../src/write/write-manual.js';
import type { Writing } from '../../src/write/writing.js';
import { smallRulebook } from './small-rulebook.js';
import { templates } from './templates.js';
import { writingOf } from './writing-of.js';

const write = (rulebook = smallRulebook()) => writeManual({ rulebook, templates, tool: '9.9.9' });
const print = (writing: Writing) => printHtml(writing, loadAssets());
const html = await print(write());
const body = html.slice(html.indexOf('<body'), html.indexOf('<script'));
const policyOf = (page: string) =>
  page.match(/<meta http-equiv="Content-Security-Policy" content="([^"]*)"/)?.[1]?.replaceAll('&#x27;', "'");
const between = (start: string, end: string) => html.slice(html.indexOf(start) + start.length, html.indexOf(end));

describe('the HTML of a manual', () => {
  it('is the same bytes twice', async () => {
    expect(await print(write())).toBe(html);
  });

  it('asks for nothing from outside', () => {
    expect(html).not.toMatch(/\b(?:srcset|action|poster|data)=|@import|<(?:link|iframe|img|object)\b|<script\s/);
    expect([...html.matchAll(/url\((.{10})/g)].filter(([, url]) => url !== 'data:font/')).toEqual([]);
    expect([...html.matchAll(/(?:href|src)="([^"]*)"/g)].filter(([, url]) => !url?.startsWith('#'))).toEqual([]);
  });

  it('lets only its own style and script count, and no style of a single element', () => {
    const hash = (text: string) => `'sha256-${createHash('sha256').update(text).digest('base64')}'`;
    expect(policyOf(html)).toBe(
      [
        "default-src 'none'",
        `style-src ${hash(between('<style>', '</style>'))}`,
        `script-src ${hash(between('<script>', '</script>'))}`,
        "font-src data:; base-uri 'none'; form-action 'none'",
      ].join('; '),
    );
    expect(body).not.toMatch(/<[^>]+\s(?:style|on\w+)=/);
  });

  it('leads every link to an id that is there once', () => {
    const ids = [...html.matchAll(/ id="([^"]*)"/g)].map(([, id]) => id);
    expect(new Set(ids).size).toBe(ids.length);
    expect([...html.matchAll(/href="#([^"]*)"/g)].map(([, id]) => id).filter((id) => !ids.includes(id))).toEqual([]);
  });

  it('has a language, a way past the contents, landmarks, one first heading and no skipped level', () => {
    expect(html).toContain('<html lang="en-US">');
    expect(body).toMatch(/^<body class="manual"><a class="skip" href="#manual">Skip the contents<\/a><header/);
    expect(body).toMatch(/<nav id="contents" class="contents" aria-label="Contents">.*<main id="manual" tabindex="-1">/s);
    const levels = [...body.matchAll(/<h([1-6])\b/g)].map(([, level]) => Number(level));
    expect(levels.filter((level) => level === 1)).toHaveLength(1);
    expect(levels.filter((level, index) => level > (levels[index - 1] ?? 0) + 1)).toEqual([]);
  });

  it('says of every table head whether it stands over a column, beside a row or over a group', () => {
    const heads = [...body.matchAll(/<th\b[^>]*>/g)].map(([tag]) => tag);
    expect(heads.length).toBeGreaterThan(20);
    expect(heads.filter((tag) => !/scope="(?:col|row|rowgroup)"/.test(tag))).toEqual([]);
  });

  it('names cautions', () => {
    expect(body).toContain('<div class="caution" role="note" aria-label="Caution"><p class="word">Caution</p>');
  });

  it('prints page numbers in words of the phrases, and each chapter lying or upright', async () => {
    expect(html).toContain('content: "Page " counter(page) " of " counter(pages);');
    expect(html).toContain('size: letter portrait');
    expect(html).toMatch(/chapter-6-wide \{ size: letter landscape/);
    const meta = { ...write().meta, words: { ...write().meta.words, 'print.page-of': '{pages} Seiten, diese: {page}' } };
    expect((await print({ ...write(), meta })).match(/@bottom-right .*?content: ([^;]*);/)?.[1]).toBe(
      'counter(pages) " Seiten, diese: " counter(page)',
    );
  });

  it('prints the empty lines of a form, and a head without rows as boxes', () => {
    expect(body.match(/<tr><td><\/td><td><\/td><\/tr>/g)).toHaveLength(3);
    expect(body).toMatch(/<table class="fill w-9-2-2-2">(?:<colgroup>.*?<\/colgroup>)<tbody><tr><td>/);
    expect(html).toContain('.w-9-2-2-2 > colgroup > col:nth-child(1) { width: 60.00%; }');
  });

  it('treats what the clinic says as text', async () => {
    const rulebook = smallRulebook();
    const clinic = {
      ...rulebook.clinic,
      name: '*Evil* <b>&"\\A", } @page{} </style><script>',
      about: '::: # <img src=x> [](limit:holding.longest-wait)',
    };
    const evil = await print(write(smallRulebook({ clinic })));
    expect(evil).not.toMatch(/<img|<b>/);
    expect(evil.match(/<script/g)).toHaveLength(1);
    expect(evil.match(/<\/style>/g)).toHaveLength(1);
  });
});

describe('the fonts of a page', () => {
  const font = (family: string, weight: number, style: string) =>
    html.match(
      new RegExp(`@font-face \\{ font-family: "${family}"; font-weight: ${weight}; font-style: ${style}; [^}]*base64,([^)]*)`),
    )?.[1];

  it('are four faces of few letters under a name of our own', () => {
    for (const weight of [400, 700])
      for (const style of ['normal', 'italic']) {
        const bytes = Buffer.from(font('Rulebook Sans', weight, style) ?? '', 'base64');
        expect(bytes.toString('latin1', 0, 4)).toBe('wOF2');
        expect(bytes.length).toBeLessThan(12_000);
      }
    expect(html.replace(/<svg\b.*?<\/svg>/gs, '')).not.toContain('Source Sans');
  });

  it('take a sign that they lack from another', async () => {
    expect(font('Rulebook Symbols', 400, 'normal')).toBeUndefined();
    expect(await print(writingOf('Tick ☑ here.'))).toContain('@font-face { font-family: "Rulebook Symbols"');
  });

  it('are renamed inside as well, but for what their licence says', () => {
    const utf16 = (text: string) => Buffer.from(text, 'utf16le').swap16().toString('latin1');
    const { regular } = loadAssets().fonts;
    const names = Buffer.from(renameFont(regular, 'Rulebook Sans').subarray(regular.length)).toString('latin1');
    expect(names).toContain(utf16('Rulebook Sans'));
    expect(names).toContain(utf16('RulebookSans-Regular'));
    expect(names).not.toContain(utf16('Source Sans 3'));
    expect(names).toContain(utf16('Reserved Font Name'));
  });
});

describe('the HTML of other writings', () => {
  it('needs neither contents nor search', async () => {
    const page = await print(writingOf('# Washer\n\nShut the door.', { kind: 'cards' }));
    expect(page).toContain('<body class="cards">');
    expect(page).toMatch(/<main id="manual" tabindex="-1"><h1 class="unseen">[^<]+<\/h1>/);
    expect(page).not.toMatch(/<nav|type="search"/);
  });

  it('shows and says what a redline puts in, takes out and moves', async () => {
    const writing = writingOf('# Waiting\n\nWait.\n\n- One\n\n| A | B |\n| --- | --- |\n| 1 | 2 |', { kind: 'redline' });
    const [, paragraph, list, table] = writing.tree.children;
    if (paragraph?.type !== 'paragraph' || list?.type !== 'list' || table?.type !== 'table')
      throw new Error('not what was written');
    paragraph.children = [
      { type: 'text', value: 'Wait ' },
      { type: 'deleted', children: [{ type: 'text', value: '10 minutes' }] },
      { type: 'inserted', children: [{ type: 'text', value: '8 minutes' }] },
    ];
    paragraph.data = { change: 'moved' };
    for (const item of list.children) item.data = { change: 'inserted' };
    for (const row of table.children.slice(1)) row.data = { change: 'deleted' };
    const page = await print(writing);
    expect(page).toContain(
      '<p class="changed moved"><span class="change-word">moved</span> Wait <del><span class="unseen">[deleted </span>10 minutes<span class="unseen">] </span></del><ins><span class="unseen">[inserted </span>8 minutes<span class="unseen">] </span></ins></p>',
    );
    expect(page).toContain('<li class="changed inserted"><span class="change-word">inserted</span> One</li>');
    expect(page).toContain('<tr class="changed deleted"><th scope="row"><span class="change-word">deleted</span> 1</th>');
  });

  it('draws figures in the page, with a name and a description', async () => {
    const writing = writingOf('# Way\n\nLook.');
    const path = modelFigures(smallRulebook()).get('path');
    if (path === undefined) throw new Error('the small clinic has a figure');
    writing.tree.children.push({ ...path, type: 'figure', caption: 'The way', alt: 'From "dirty" to clean.' });
    const page = await print(writing);
    expect(page).toMatch(
      /<figure id="figure-path"><div class="drawing"><svg role="img" aria-labelledby="figure-path-title figure-path-alt"[^>]*><title id="figure-path-title">The way<\/title><desc id="figure-path-alt">From &#34;dirty&#34; to clean.<\/desc>/,
    );
    expect(page).toContain('<figcaption>The way</figcaption></figure>');
    expect(page).toContain('.drawing text { font-family: "Rulebook Sans"');
  });
});
