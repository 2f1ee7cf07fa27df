import type { Nodes, RootContent } from 'mdast';
import { toString as textOf } from 'mdast-util-to-string';
import type { Finding } from '../../read/finding.js';
import type { BuiltTree } from '../tree/build-tree.js';
import { walk } from '../tree/walk.js';
import type { PlaceOf } from './place-of.js';

/** Reports headings that skip a level, sections with nothing in them, and ids that are at home twice. */
export function checkOutline({ tree }: BuiltTree, placeOf: PlaceOf): Finding[] {
  return [...checkHeadings(tree.children, placeOf), ...checkHomes(tree, placeOf)];
}

function checkHeadings(nodes: readonly RootContent[], placeOf: PlaceOf): Finding[] {
  let depth = 0;
  return nodes.flatMap((node, index): Finding[] => {
    if (node.type !== 'heading') return [];
    const skipped = node.depth > depth + 1;
    depth = node.depth;
    const title = textOf(node).trim();
    const end = nodes.findIndex((each, at) => at > index && each.type === 'heading');
    const next = end < 0 ? undefined : nodes[end];
    const bare = !nodes.slice(index + 1, end < 0 ? undefined : end).some(printsSomething);
    const empty = bare && (next?.type !== 'heading' || next.depth <= node.depth);
    return [
      ...(skipped ? [{ code: 'E605', message: `the heading \`${title}\` skips a level`, place: placeOf(node) } as const] : []),
      ...(empty
        ? [{ code: 'E607', message: `nothing stands under the heading \`${title}\``, place: placeOf(node) } as const]
        : []),
    ];
  });
}

function printsSomething(node: RootContent): boolean {
  let found = false;
  walk({ type: 'root', children: [node] }, (each) => {
    found ||= each.type === 'figure' || ('value' in each && each.value.trim() !== '');
  });
  return found;
}

function checkHomes(tree: Nodes & { type: 'root' }, placeOf: PlaceOf): Finding[] {
  const seen = new Set<string>();
  const findings: Finding[] = [];
  walk(tree, (node) => {
    for (const { kind, id, home } of node.data?.marks ?? []) {
      const key = `${kind}:${id}`;
      if (home && seen.has(key))
        findings.push({ code: 'E606', message: `\`${key}\` is at home twice in the manual`, place: placeOf(node) });
      if (home) seen.add(key);
    }
  });
  return findings;
}
