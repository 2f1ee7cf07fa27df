import { Footer, Header, PageNumber, Paragraph, Tab, TabStopType, TextRun } from 'docx';
import type { ManualMeta } from '../../model/model-title.js';
import { filledWord, wordOf } from '../../text/word-of.js';
import type { Page } from './page.js';
import { plain } from './print-words.js';

/** The head and foot of each page of a width: what document it is, which version, from when, and which page of how many. */
export function runningHeads(meta: ManualMeta, { text: { width } }: Page): { header: Header; footer: Footer } {
  const version = `${meta.number}, ${filledWord(meta, 'print.version', { version: meta.version })}`;
  const from = filledWord(meta, 'print.in-force-from', { date: meta.effective });
  const status = `${from} · ${wordOf(meta, 'print.uncontrolled')}`;
  return {
    header: new Header({ children: [line('Header', width, [text(`${meta.clinic}: ${meta.title}`)], [text(version)])] }),
    footer: new Footer({ children: [line('Footer', width, [text(status)], pageOf(wordOf(meta, 'print.page-of')))] }),
  };
}

function line(style: 'Header' | 'Footer', width: number, left: TextRun[], right: TextRun[]): Paragraph {
  return new Paragraph({
    style,
    tabStops: [{ type: TabStopType.RIGHT, position: width }],
    children: [...left, new TextRun({ children: [new Tab()] }), ...right],
  });
}

function text(words: string): TextRun {
  return new TextRun({ text: plain(words) });
}

/** `Page {page} of {pages}` with the fields in its places. */
function pageOf(phrase: string): TextRun[] {
  return phrase
    .split(/(\{page\}|\{pages\})/)
    .filter((piece) => piece !== '')
    .map((piece) => {
      if (piece === '{page}') return new TextRun({ children: [PageNumber.CURRENT] });
      return piece === '{pages}' ? new TextRun({ children: [PageNumber.TOTAL_PAGES] }) : text(piece);
    });
}
