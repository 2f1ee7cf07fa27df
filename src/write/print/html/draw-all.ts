import type { Root } from 'mdast';
import { drawSvg } from '../../figures/draw-svg.js';
import type { FigureNode } from '../../tree/nodes.js';
import { walk } from '../../tree/walk.js';

/** All figures of a tree as SVG, by their ids. */
export async function drawAll(tree: Root): Promise<Map<string, string>> {
  const figures: FigureNode[] = [];
  walk(tree, (node) => {
    if (node.type === 'figure') figures.push(node);
  });
  const drawings = new Map<string, string>();
  for (const figure of figures) drawings.set(figure.id, await drawSvg(figure));
  return drawings;
}
