import { Document, Packer } from 'docx';
import { wordOf } from '../text/word-of.js';
import type { Writing } from '../writing.js';
import type { Assets } from './assets.js';
import { nameBookmarks } from './docx/bookmarks.js';
import { drawFigures } from './docx/draw-figures.js';
import { headingNumbers } from './docx/heading-numbers.js';
import { layOut } from './docx/lay-out.js';
import { normalizeDocx } from './docx/normalize.js';
import { countsByItself, numberingOf } from './docx/numbering.js';
import { fontFamily, stylesOf } from './docx/paragraph-styles.js';
import { piecesOf } from './docx/pieces.js';
import { counter, type Press } from './docx/press.js';
import { footnotesOf, printFootnotes } from './docx/print-footnotes.js';
import { plain } from './docx/print-words.js';

/**
 * Prints a writing as a Word file, for editing and merging: with real styles, headings that number themselves, contents, heads
 * and feet, and its fonts inside. Changes of a redline are tracked changes, which Word can accept or refuse.
 */
export async function printDocx(writing: Writing, assets: Assets): Promise<Uint8Array> {
  const { tree, meta, sections } = writing;
  const notes = footnotesOf(tree);
  const press: Press = {
    meta,
    bookmarks: nameBookmarks(tree),
    footnotes: new Map(notes.map(({ identifier }, index) => [identifier, index + 1])),
    drawings: await drawFigures(tree, assets),
    counted: countsByItself(sections),
    changedBy: { author: plain(meta.clinic), date: `${meta.effectiveOn}T00:00:00Z` },
    nextList: counter(),
    nextChange: counter(),
  };
  const { external, ...styles } = stylesOf(meta, press.counted);
  const document = new Document({
    title: plain(meta.title),
    subject: plain(`${meta.number}, ${meta.version}`),
    creator: plain(meta.clinic),
    lastModifiedBy: plain(meta.clinic),
    description: plain(wordOf(meta, 'print.word-copy')),
    revision: 1,
    compatibility: { version: 15 },
    externalStyles: external,
    styles,
    numbering: { config: numberingOf() },
    footnotes: printFootnotes(notes, press),
    fonts: [embedded(assets)],
    ...(press.counted && { pageNumbers: headingNumbers(sections) }),
    sections: layOut(piecesOf(writing, press), meta, hasTitlePage(writing)),
  });
  return normalizeDocx(await Packer.toBuffer(document), meta.effectiveOn);
}

function hasTitlePage({ tree }: Writing): boolean {
  return tree.children.some(
    (node) => node.data?.is === 'title' || (node.type === 'containerDirective' && node.name === 'titlepage'),
  );
}

function embedded({ fonts }: Assets) {
  return {
    name: fontFamily,
    data: Buffer.from(fonts.regular),
    italic: Buffer.from(fonts.italic),
    bold: Buffer.from(fonts.bold),
    boldItalic: Buffer.from(fonts.boldItalic),
  };
}
