import type { RootContent } from 'mdast';
import type { ContainerDirective } from 'mdast-util-directive';
import type { Piece } from './lay-out.js';
import { flowing, headed, piece } from './make-piece.js';
import { containerIn, type Nested } from './nest.js';
import { type Layout, mm, pageOf } from './page.js';
import type { Press } from './press.js';
import { leastRowHeight, rowHeightOf } from './row-height.js';

/** Room that the words which open a chapter of forms take above its first sheet, and that of the note on this copy, in twips. */
export const [openingWords, copyNoteRoom] = [mm(36), mm(18)];

/** The parts of a chapter. A sheet fills a page; two half sheets share one where they fit; a filled example has its own. */
export function partPieces(parts: readonly Nested[], press: Press, above: number): Piece[] {
  const pieces: Piece[] = [];
  for (let index = 0; index < parts.length; index += 1) {
    const { head, body } = parts[index] ?? { head: undefined, body: [] };
    const layout = layoutOf(body);
    const { text } = pageOf(press.meta, layout);
    const add = (part: Nested, newPage: boolean, rowHeight?: number) =>
      pieces.push(headed(part.head, piece(part.body, layout, 1, press, rowHeight), newPage, press, true));
    const sheet = containerIn(body, 'sheet');
    if (containerIn(body, 'example') !== undefined) add({ head, body }, true);
    else if (sheet === undefined) pieces.push(...flowing(head, body, layout, false, press));
    else {
      const next = parts[index + 1];
      const partner = next !== undefined && layoutOf(next.body) === layout ? containerIn(next.body, 'sheet') : undefined;
      const pair = isHalf(sheet) && isHalf(partner) ? rowHeightOf([sheet, partner], text.width, text.height) : undefined;
      const first = index === 0 && layout === 'portrait';
      const under = first ? rowHeightOf([sheet], text.width, text.height - above) : undefined;
      if (pair !== undefined && next !== undefined) {
        add({ head, body }, true, pair);
        add(next, false, pair);
        index += 1;
      } else if (under !== undefined) add({ head, body }, false, under);
      else add({ head, body }, true, rowHeightOf([sheet], text.width, text.height) ?? leastRowHeight);
    }
  }
  return pieces;
}

function isHalf(sheet: ContainerDirective | undefined): sheet is ContainerDirective {
  return sheet?.attributes?.['size'] === 'half';
}

function layoutOf(nodes: readonly RootContent[]): Layout {
  const lies = nodes.some((node) => node.type === 'containerDirective' && node.attributes?.['layout'] === 'landscape');
  return lies ? 'landscape' : 'portrait';
}
