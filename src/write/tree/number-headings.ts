import type { Heading, Root } from 'mdast';
import { toString as textOf } from 'mdast-util-to-string';
import { anchorOf, type Section } from './nodes.js';

/**
 * Numbers the headings of the first two depths: chapters `1`, `2`, after the directive `::annexes` `A`, `B`, and within
 * them `4.1`. Returns them as the table of contents. Deeper headings carry no number.
 */
export function numberHeadings(tree: Root): Section[] {
  const sections: Section[] = [];
  let [chapter, part, annexes] = [0, 0, false];
  for (const node of tree.children) {
    if (node.type === 'leafDirective' && node.name === 'annexes') [chapter, annexes] = [0, true];
    if (node.type !== 'heading' || node.depth > 2) continue;
    if (node.depth === 1) [chapter, part] = [chapter + 1, 0];
    else part += 1;
    const head = annexes ? String.fromCharCode(64 + chapter) : String(chapter);
    sections.push(sectionOf(node, node.depth === 1 ? head : `${head}.${part}`));
  }
  return sections;
}

function sectionOf(heading: Heading, number: string): Section {
  const mark = heading.data?.marks?.find(({ home }) => home) ?? { kind: 'section', id: `number-${number}`, home: true };
  heading.data = { ...heading.data, number };
  return {
    id: `${mark.kind}:${mark.id}`,
    number,
    title: textOf(heading).trim(),
    depth: heading.depth === 1 ? 1 : 2,
    anchor: anchorOf(mark),
  };
}
