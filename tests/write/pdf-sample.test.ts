import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { loadAssets } from '../../src/cli/load-assets.js';
import { manualOf } from '../../src/cli/load-manual.js';
import { home, loadClinic, loadPacks, rulebookOn } from '../../src/cli/load-rulebook.js';
import { printPdf } from '../../src/write/print/print-pdf.js';
import { readPdf } from './read-pdf.js';

const packs = loadPacks(join(home, 'rules'), home, 'rules');
const { rulebook } = rulebookOn(loadClinic(packs, join(home, 'seeds/harrow-mills'), home), '2026-12-01');
if (rulebook === undefined) throw new Error('the sample clinic does not link');
const manual = manualOf(rulebook);
const { pages, bookmarks } = await readPdf(await printPdf(manual, loadAssets()));
/** The reader of the library gives some hyphens of bold words as blanks. */
const plain = (words: string) => words.replaceAll('-', ' ');
const text = pages.map((page) => plain(page.text));

describe('the manual of a sample clinic as PDF', () => {
  it('fits a binder', () => {
    expect(pages.length).toBeGreaterThan(60);
    expect(pages.length).toBeLessThanOrEqual(130);
  });

  it('is on Letter paper, its wide sheets on their side', () => {
    const shapes = new Set(pages.map(({ width, height }) => `${width} ${height}`));
    expect([...shapes].sort()).toEqual(['612 792', '792 612']);
  });

  it('runs off no page', () => {
    expect(text.filter((_, index) => pages[index]?.overflows)).toEqual([]);
  });

  it('begins each section on the page that the contents and its bookmark say', () => {
    const contents = text.slice(1, 3).join(' ');
    const titles = bookmarks.flatMap(({ title, items }) => [title, ...items.map((item) => item.title)]);
    for (const { number, title } of manual.sections) {
      expect(titles).toContain(`${number} ${title}`);
      const heading = plain(`${number} ${title}`);
      const page = Number(contents.split(` ${heading} `)[1]?.match(/^\d+/)?.[0]);
      expect(text[page - 1], heading).toContain(heading);
    }
  });

  it('sends references to the page on which they are answered', () => {
    let found = 0;
    const all = text.join(' ');
    for (const { number, title } of manual.sections)
      for (const piece of all.split(plain(`${title} (${number}, page `)).slice(1)) {
        found += 1;
        expect(text[Number.parseInt(piece, 10) - 1], `${number} ${title}`).toContain(plain(`${number} ${title}`));
      }
    expect(found).toBeGreaterThan(100);
  });
});
