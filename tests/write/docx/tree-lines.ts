import type { Nodes, Root } from 'mdast';
import { toString as textOf } from 'mdast-util-to-string';
import { walk } from '../../../src/write/tree/walk.js';

/** The lines of words of a tree in reading order, one for each heading, paragraph and cell that has any. */
export function treeLines(tree: Root): string[] {
  const lines: string[] = [];
  walk(tree, (node) => {
    if (node.type === 'figure') lines.push(bare(node.caption));
    if (node.type !== 'heading' && node.type !== 'paragraph' && node.type !== 'tableCell') return;
    const words = bare(wordsOf(node));
    if (words !== '') lines.push(words);
  });
  return lines;
}

/** A break of a line parts words. */
function wordsOf(node: Nodes): string {
  if (node.type === 'break') return ' ';
  return 'children' in node ? node.children.map(wordsOf).join('') : textOf(node);
}

/** Words without any space, which formats set as they like. */
export function bare(words: string): string {
  return words.replace(/\s+/g, '');
}

/** The first line that does not follow in the other list after the one before; `undefined` when all do. */
export function firstMissing(wanted: readonly string[], found: readonly string[]): string | undefined {
  let at = 0;
  for (const line of wanted) {
    const next = found.indexOf(line, at);
    if (next < 0) return line;
    at = next + 1;
  }
  return undefined;
}
