import type { Nodes, Root } from 'mdast';
import type { Section } from './nodes.js';
import { walkSections } from './walk.js';

/** What stands in one section, by `kind:id` such as `limit:holding.longest-dry-wait`, in reading order. */
export interface Contents {
  section: Section;
  /** What is at home here or shown again. */
  prints: Set<string>;
  /** What is named here and printed elsewhere. */
  names: Set<string>;
}

/** What each section prints and names. */
export function contentsOf({ tree, sections }: { tree: Root; sections: readonly Section[] }): Contents[] {
  const all = new Map(
    sections.map((section): [Section, Contents] => [section, { section, prints: new Set(), names: new Set() }]),
  );
  walkSections(tree, sections, (node, section) => {
    const contents = section && all.get(section);
    if (contents === undefined) return;
    for (const { kind, id } of node.data?.marks ?? []) contents.prints.add(`${kind}:${id}`);
    const named = namedBy(node);
    if (named !== undefined) contents.names.add(named);
  });
  for (const { prints, names } of all.values()) for (const key of prints) names.delete(key);
  return [...all.values()];
}

/** The sections in which each thing is printed or named, by `kind:id`. */
export function printedIn(manual: { tree: Root; sections: readonly Section[] }): Map<string, Section[]> {
  const found = new Map<string, Section[]>();
  for (const { section, prints, names } of contentsOf(manual))
    for (const key of [...prints, ...names]) found.set(key, [...(found.get(key) ?? []), section]);
  return found;
}

/** A reference to where something stands, `[](at:limit:x)`, says nothing about it. */
function namedBy(node: Nodes): string | undefined {
  if (node.type !== 'reference' || node.scheme === 'at') return undefined;
  return `${node.scheme === 'every' ? 'task' : node.scheme}:${node.target}`;
}
