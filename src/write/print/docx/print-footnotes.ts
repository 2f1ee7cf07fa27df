import type { Paragraph } from 'docx';
import type { FootnoteDefinition, Root } from 'mdast';
import { walk } from '../../tree/walk.js';
import type { Press } from './press.js';
import { printParagraph } from './print-paragraph.js';

/** The footnotes of a tree, in order. */
export function footnotesOf(tree: Root): FootnoteDefinition[] {
  const notes: FootnoteDefinition[] = [];
  walk(tree, (node) => {
    if (node.type === 'footnoteDefinition') notes.push(node);
  });
  return notes;
}

/** Footnotes by their number, as the document takes them. */
export function printFootnotes(notes: readonly FootnoteDefinition[], press: Press): Record<string, { children: Paragraph[] }> {
  return Object.fromEntries(
    notes.map(({ children }, index) => [
      String(index + 1),
      {
        children: children.flatMap((block) =>
          block.type === 'paragraph'
            ? [printParagraph({ words: block.children, holders: [block] }, press, { style: 'FootnoteText' })]
            : [],
        ),
      },
    ]),
  );
}
