import type { Root } from 'mdast';
import type { Section } from './nodes.js';
import { walkSections } from './walk.js';

/** The sections in which each thing is printed or named, by `kind:id` such as `limit:holding.longest-dry-wait`. */
export function printedIn(manual: { tree: Root; sections: readonly Section[] }): Map<string, Section[]> {
  const found = new Map<string, Section[]>();
  walkSections(manual.tree, manual.sections, (node, section) => {
    if (section === undefined) return;
    for (const key of keysOf(node)) {
      const known = found.get(key) ?? [];
      if (!known.includes(section)) found.set(key, [...known, section]);
    }
  });
  return found;
}

function keysOf(node: Parameters<Parameters<typeof walkSections>[2]>[0]): string[] {
  const marked = (node.data?.marks ?? []).map(({ kind, id }) => `${kind}:${id}`);
  if (node.type !== 'reference') return marked;
  return [...marked, `${node.scheme === 'every' ? 'task' : node.scheme}:${node.target}`];
}
