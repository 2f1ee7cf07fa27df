import { Graphviz } from '@hpcc-js/wasm-graphviz';
import type { Figure } from './figure.js';

/** A figure as SVG that needs nothing from outside. */
export async function drawSvg({ drawing }: Figure): Promise<string> {
  const graphviz = await Graphviz.load();
  const lines = [
    ...drawing.nodes.map(({ id, label }) => `${JSON.stringify(id)} [label=${JSON.stringify(label)}];`),
    ...drawing.edges.map(({ from, to }) => `${JSON.stringify(from)} -> ${JSON.stringify(to)};`),
  ];
  const svg = graphviz.dot(`digraph { node [shape=box, fontname="Source Sans 3"]; ${lines.join(' ')} }`, 'svg');
  return svg.replace(/^[\s\S]*?(?=<svg)/, '').replace(/<title>.*?<\/title>|<!--[\s\S]*?-->| id="[^"]*"/g, '');
}
