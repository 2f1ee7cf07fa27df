import type { Root, RootContent } from 'mdast';
import { parseMarkdown } from './dialect.js';
import { walk } from './walk.js';

/**
 * Reads Markdown as `parseMarkdown` does, section by section, and keeps what it read: after an edit only the sections that changed are
 * read again. Positions are left out.
 */
export function parseSections(text: string): Root {
  const pieces = reachesAcross.test(text) ? [text] : splitSections(text);
  return { type: 'root', children: pieces.flatMap(parsePiece) };
}

/** Footnotes and definitions of links are named from other sections. */
const reachesAcross = /\[\^|^ {0,3}\[[^\]]+\]:/m;

/** Pieces that each begin with a heading of the first two depths, outside of any block of `:::`. */
export function splitSections(text: string): string[] {
  const pieces: string[][] = [[]];
  const open: number[] = [];
  for (const line of text.split('\n')) {
    const [, colons = '', name = ''] = /^(:{3,})\s*(\w*)/.exec(line) ?? [];
    if (colons !== '' && name !== '') open.push(colons.length);
    else if (colons !== '') while (open.length > 0 && (open.pop() ?? 0) > colons.length);
    if (open.length === 0 && /^#{1,2} /.test(line)) pieces.push([]);
    pieces.at(-1)?.push(line);
  }
  return pieces.filter((lines) => lines.length > 0).map((lines) => lines.join('\n'));
}

/** Sections that were read before, those used last at the end. */
const known = new Map<string, RootContent[]>();
const mostKnown = 4000;

function parsePiece(piece: string): RootContent[] {
  const kept = known.get(piece) ?? parseBare(piece);
  known.delete(piece);
  known.set(piece, kept);
  if (known.size > mostKnown) known.delete(known.keys().next().value ?? '');
  // The tree that is made of it is marked and filled in place.
  return structuredClone(kept);
}

function parseBare(piece: string): RootContent[] {
  const tree = parseMarkdown(piece);
  walk(tree, (node) => {
    delete node.position;
  });
  return tree.children;
}
