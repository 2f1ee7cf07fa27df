import type { Nodes, Parents, Root } from 'mdast';
import type { Section } from './nodes.js';

/** Visits every node in reading order with the nodes around it, outermost first. */
export function walk(tree: Root, visit: (node: Nodes, parents: readonly Parents[]) => void): void {
  walkInto(tree, [], visit);
}

/** As `walk`, with the numbered section that each node stands in; `undefined` before the first one. */
export function walkSections(
  tree: Root,
  sections: readonly Section[],
  visit: (node: Nodes, section: Section | undefined, parents: readonly Parents[]) => void,
): void {
  let section: Section | undefined;
  walk(tree, (node, parents) => {
    const number = node.type === 'heading' ? node.data?.number : undefined;
    if (number !== undefined) section = sections.find((each) => each.number === number);
    visit(node, section, parents);
  });
}

function walkInto(node: Nodes, parents: readonly Parents[], visit: (node: Nodes, parents: readonly Parents[]) => void): void {
  visit(node, parents);
  if (!('children' in node)) return;
  const inner = [...parents, node];
  for (const child of [...node.children]) walkInto(child, inner, visit);
}
