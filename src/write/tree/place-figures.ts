import type { Root } from 'mdast';
import { visit } from 'unist-util-visit';
import type { Figure } from '../figures/figure.js';

/** Puts each figure where `::figure{id="…"}` asks for it, in place. What is not known stays a directive. */
export function placeFigures(tree: Root, figures: ReadonlyMap<string, Figure>): void {
  visit(tree, 'leafDirective', (node, index, parent) => {
    const figure = node.name === 'figure' ? figures.get(node.attributes?.['id'] ?? '') : undefined;
    if (figure === undefined || parent === undefined || index === undefined) return;
    parent.children[index] = { type: 'figure', ...figure };
  });
}
