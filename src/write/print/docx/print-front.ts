import { type FileChild, LeaderType, Paragraph, TableOfContents, TextRun } from 'docx';
import { wordOf } from '../../text/word-of.js';
import type { Press } from './press.js';
import { plain } from './print-words.js';

/** What this file is for and, where it has contents, how its page numbers are brought up to date: in a box on its first page. */
export function copyNote({ meta }: Press, contents: boolean): Paragraph[] {
  const lines = ['print.word-copy', ...(contents ? ['print.word-page-numbers'] : [])].map((id) => plain(wordOf(meta, id)));
  return lines.map((line) => new Paragraph({ style: 'CopyNote', children: [new TextRun({ text: line })] }));
}

/**
 * The contents as a field of Word, already filled in with the headings. Page numbers come when Word updates the field: until
 * then there are none, rather than wrong ones.
 */
export function printContents({ meta }: Press, newPage: boolean): FileChild[] {
  return [
    new Paragraph({ style: 'TOCHeading', pageBreakBefore: newPage, text: plain(wordOf(meta, 'print.contents')) }),
    new TableOfContents(wordOf(meta, 'print.contents'), {
      hyperlink: true,
      headingStyleRange: '1-2',
      // Annexes come in by their outline level: the list of other styles depends on the language of Word.
      useAppliedParagraphOutlineLevel: true,
      beginDirty: false,
      tabLeader: LeaderType.NONE,
    }),
  ];
}
