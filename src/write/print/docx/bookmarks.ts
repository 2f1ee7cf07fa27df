import type { Root } from 'mdast';
import { anchorOf } from '../../tree/nodes.js';
import { walk } from '../../tree/walk.js';

/** Most characters of a bookmark's name. */
const longest = 40;

/**
 * A bookmark for each anchor of the tree that some reference leads to. Word takes letters, digits and underscores, at most
 * 40 of them, the first a letter, and does not tell capitals from small letters.
 */
export function nameBookmarks(tree: Root): Map<string, string> {
  const wanted = new Set<string>();
  const homes = new Set<string>();
  walk(tree, (node) => {
    if (node.type === 'reference' && node.anchor !== undefined) wanted.add(node.anchor);
    for (const mark of node.data?.marks ?? []) if (mark.home) homes.add(anchorOf(mark));
  });
  const names = new Map<string, string>();
  const taken = new Set<string>();
  for (const anchor of homes) if (wanted.has(anchor)) names.set(anchor, freeName(anchor, taken));
  return names;
}

function freeName(anchor: string, taken: Set<string>): string {
  const plain = anchor.replace(/[^A-Za-z0-9]+/g, '_').replace(/^(?![A-Za-z])/, 'a');
  for (let count = 1; ; count += 1) {
    const end = count === 1 ? '' : `_${count}`;
    const name = plain.slice(0, longest - end.length) + end;
    if (taken.has(name.toLowerCase())) continue;
    taken.add(name.toLowerCase());
    return name;
  }
}
