import type { Heading, RootContent } from 'mdast';
import type { ContainerDirective } from 'mdast-util-directive';

/** A heading with all that stands under it. */
export interface Nested {
  head: Heading | undefined;
  body: RootContent[];
}

/** Parts a run of blocks at headings of that depth. The first group is what stands before them. */
export function nest(nodes: readonly RootContent[], depth: number): Nested[] {
  const groups: Nested[] = [{ head: undefined, body: [] }];
  for (const node of nodes) {
    if (node.type === 'heading' && node.depth === depth) groups.push({ head: node, body: [] });
    else groups.at(-1)?.body.push(node);
  }
  return groups;
}

/** The first container of that name. */
export function containerIn(nodes: readonly RootContent[], name: string): ContainerDirective | undefined {
  return nodes.find((node): node is ContainerDirective => node.type === 'containerDirective' && node.name === name);
}
