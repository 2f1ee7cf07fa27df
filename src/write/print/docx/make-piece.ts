import type { FileChild } from 'docx';
import type { Heading, RootContent } from 'mdast';
import { columnWidth, type Piece } from './lay-out.js';
import { type Layout, pageOf } from './page.js';
import type { Place, Press } from './press.js';
import { printBlock, printHeading } from './print-block.js';

/** Words that flow over pages, lists in columns apart from the rest. */
export function flowing(
  head: Heading | undefined,
  body: readonly RootContent[],
  layout: Layout,
  newPage: boolean,
  press: Press,
): Piece[] {
  const runs: { columns: 1 | 2; nodes: RootContent[] }[] = [{ columns: 1, nodes: [] }];
  for (const node of body) {
    const columns = node.type === 'containerDirective' && node.name === 'columns' ? 2 : 1;
    if (runs.at(-1)?.columns === columns) runs.at(-1)?.nodes.push(node);
    else runs.push({ columns, nodes: [node] });
  }
  return runs.map(({ columns, nodes }, index) => {
    const printed = piece(nodes, layout, columns, press);
    return index === 0 ? headed(head, printed, newPage, press) : printed;
  });
}

/** A piece under its heading. */
export function headed(
  head: Heading | undefined,
  { print, ...rest }: Piece,
  newPage: boolean,
  press: Press,
  tight = false,
): Piece {
  if (head === undefined) return { ...rest, newPage, print };
  return { ...rest, newPage, print: (breaks) => [printHeading(head, press, { newPage: breaks, tight }), ...print(false)] };
}

/** Blocks as one piece; below a heading of the third depth they are tasks. */
export function piece(nodes: readonly RootContent[], layout: Layout, columns: 1 | 2, press: Press, rowHeight?: number): Piece {
  const width = columnWidth(pageOf(press.meta, layout), columns);
  return {
    layout,
    columns,
    newPage: false,
    print(): FileChild[] {
      let inside: Place['inside'] = 'text';
      return nodes.flatMap((node) => {
        if (node.type === 'heading' && node.depth === 3) inside = 'task';
        return printBlock(node, press, { width, inside, ...(rowHeight !== undefined && { rowHeight }) });
      });
    },
  };
}
