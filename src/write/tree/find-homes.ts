import type { Root } from 'mdast';
import { anchorOf, type Section } from './nodes.js';
import { walkSections } from './walk.js';

/** Where something is printed for good: its anchor, and the section that it stands in. */
export interface Home {
  anchor: string;
  section: Section | undefined;
}

/** The homes of everything that is marked, by `kind:id`. Where two claim to be home, the first one is. */
export function findHomes(tree: Root, sections: readonly Section[]): Map<string, Home> {
  const homes = new Map<string, Home>();
  walkSections(tree, sections, (node, section) => {
    for (const mark of node.data?.marks ?? []) {
      const key = `${mark.kind}:${mark.id}`;
      if (mark.home && !homes.has(key)) homes.set(key, { anchor: anchorOf(mark), section });
    }
  });
  return homes;
}
