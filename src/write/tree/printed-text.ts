import type { Nodes, TableCell, TableRow } from 'mdast';

/** How a text is read: as it is printed, or without the numbers of sections and sources, which move when something else does. */
export type Reading = 'printed' | 'unnumbered';

/**
 * The words that a node prints, on one line, references filled in. Cells are parted by ` | `, broken lines by ` · `; a figure
 * says what it shows.
 */
export function printedText(node: Nodes, reading: Reading = 'printed'): string {
  return wordsOf(node, reading).replace(/\s+/g, ' ').trim();
}

function wordsOf(node: Nodes, reading: Reading): string {
  switch (node.type) {
    case 'break':
      return ' · ';
    case 'tableRow':
      return cellsOf(node, reading)
        .map((cell) => printedText(cell, reading))
        .join(' | ');
    case 'figure':
      return `${node.caption} · ${node.alt}`;
    case 'reference': {
      const words = node.children.map((child) => wordsOf(child, reading)).join('');
      if (reading === 'printed') return words;
      return node.scheme === 'source' || node.scheme === 'at' ? `[${node.target}]` : words.replace(sectionNumber, '');
    }
    default:
      if ('children' in node) return node.children.map((child) => wordsOf(child, reading)).join('');
      return 'value' in node ? node.value : '';
  }
}

/** The row of a source begins with its number. */
function cellsOf({ data, children }: TableRow, reading: Reading): TableCell[] {
  const isNumbered = data?.marks?.some(({ kind }) => kind === 'source') ?? false;
  return reading === 'unnumbered' && isNumbered ? children.slice(1) : children;
}

/** The number of the section behind a title: `Run the washer (6.2)`. */
const sectionNumber = / \((?:\d+|[A-Z])(?:\.\d+)?\)$/;
