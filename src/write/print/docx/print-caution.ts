import { type FileChild, Paragraph } from 'docx';
import type { Nodes, RootContent } from 'mdast';
import type { ContainerDirective } from 'mdast-util-directive';
import { wordOf } from '../../text/word-of.js';
import type { Place, Press } from './press.js';
import { printBlock } from './print-block.js';
import { printParagraph } from './print-paragraph.js';
import { plain } from './print-words.js';

/** A caution as bordered paragraphs under the word itself, which stay on one page: better to read aloud than a table. */
export function printCaution(node: ContainerDirective, press: Press, place: Place, around: readonly Nodes[]): FileChild[] {
  const word = new Paragraph({ style: 'CautionWord', text: plain(wordOf(press.meta, 'print.caution')) });
  const body = node.children.flatMap((child: RootContent, index): FileChild[] => {
    if (child.type !== 'paragraph') return printBlock(child, press, { ...place, inside: 'caution' });
    const holders = index === 0 ? [child, ...around] : [child];
    const keepNext = index < node.children.length - 1;
    return [printParagraph({ words: child.children, holders, change: place.change }, press, { style: 'Caution', keepNext })];
  });
  return [word, ...body];
}
