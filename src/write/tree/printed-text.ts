import type { Nodes } from 'mdast';

/** How a text is read: as it is printed, or without the numbers of sections and sources, which move when something else does. */
export type Reading = 'printed' | 'unnumbered';

/** The words that a node prints, on one line, references filled in. Cells are parted by ` | `, broken lines by ` · `. */
export function printedText(node: Nodes, reading: Reading = 'printed'): string {
  return wordsOf(node, reading).replace(/\s+/g, ' ').trim();
}

function wordsOf(node: Nodes, reading: Reading): string {
  switch (node.type) {
    case 'break':
      return ' · ';
    case 'tableRow':
      return node.children.map((cell) => printedText(cell, reading)).join(' | ');
    case 'reference': {
      const words = node.children.map((child) => wordsOf(child, reading)).join('');
      if (reading === 'printed') return words;
      return node.scheme === 'source' ? `[${node.target}]` : words.replace(sectionNumber, '');
    }
    default:
      if ('children' in node) return node.children.map((child) => wordsOf(child, reading)).join('');
      return 'value' in node ? node.value : '';
  }
}

/** The number of the section behind a title: `Run the washer (6.2)`. */
const sectionNumber = / \((?:\d+|[A-Z])(?:\.\d+)?\)$/;
