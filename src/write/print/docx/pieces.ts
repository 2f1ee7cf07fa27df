import type { FileChild } from 'docx';
import type { Heading, RootContent } from 'mdast';
import type { ContainerDirective } from 'mdast-util-directive';
import type { Writing } from '../../writing.js';
import { groupPages } from '../html/page-groups.js';
import { columnWidth, type Piece } from './lay-out.js';
import { type Layout, mm, pageOf } from './page.js';
import type { Place, Press } from './press.js';
import { printBlock, printHeading } from './print-block.js';
import { copyNote, printContents } from './print-front.js';
import { leastRowHeight, rowHeightOf } from './row-height.js';

/** A heading with all that stands under it. */
interface Nested {
  head: Heading | undefined;
  body: RootContent[];
}

/** The writing as pieces of pages: the front, chapters on pages of their own, sheets that fill one, lists in columns. */
export function piecesOf(writing: Writing, press: Press): Piece[] {
  const { tree } = writing;
  const opens = pageOpeners(writing);
  const [front, ...chapters] = nest(tree.children, 1, true);
  return [
    ...frontPieces(front?.body ?? [], press),
    ...chapters.flatMap(({ head, body }) => {
      const [intro, ...parts] = nest(body, 2, true);
      const first = head === undefined || opens.has(head.data?.number ?? '');
      const before = flowing(head, intro?.body ?? [], 'portrait', first, press);
      return [...before, ...partPieces(parts, press)];
    }),
  ];
}

/** The numbers of those chapters that begin a page. Notices, redlines and forms run on. */
function pageOpeners({ kind, sections, meta }: Writing): ReadonlySet<string> {
  if (kind !== 'manual') return new Set();
  return new Set(groupPages(sections, meta).flatMap(({ chapters: [first] }) => first?.number ?? []));
}

function nest(nodes: readonly RootContent[], depth: number, always: boolean): Nested[] {
  const groups: Nested[] = always ? [{ head: undefined, body: [] }] : [];
  for (const node of nodes) {
    if (node.type === 'heading' && node.depth === depth) groups.push({ head: node, body: [] });
    else if (groups.length === 0) groups.push({ head: undefined, body: [node] });
    else groups.at(-1)?.body.push(node);
  }
  return groups;
}

/** The title page ends with the note on this copy; without a title page the note comes first of all. */
function frontPieces(nodes: readonly RootContent[], press: Press): Piece[] {
  const title = nodes.find((node): node is ContainerDirective => node.type === 'containerDirective' && node.name === 'titlepage');
  const note: Piece = { layout: 'portrait', columns: 1, newPage: false, print: () => copyNote(press) };
  const rest = nodes.filter((node) => node !== title);
  return [
    ...(title === undefined ? [note] : [piece([title], 'portrait', 1, press), note]),
    ...rest.map((node): Piece => {
      if (node.type !== 'leafDirective' || node.name !== 'contents') return piece([node], 'portrait', 1, press);
      return { layout: 'portrait', columns: 1, newPage: true, print: (newPage) => printContents(press, newPage) };
    }),
  ];
}

/** Room that the words which open the chapter of the forms take above its first sheet, in twips. */
const openingWords = mm(36);

/** The parts of a chapter. A sheet fills a page; two half sheets share one where they fit. */
function partPieces(parts: readonly Nested[], press: Press): Piece[] {
  const pieces: Piece[] = [];
  for (let index = 0; index < parts.length; index += 1) {
    const { head, body } = parts[index] ?? { head: undefined, body: [] };
    const layout = layoutOf(body);
    const { text } = pageOf(press.meta, layout);
    const sheet = sheetOf(body);
    if (sheet === undefined) {
      pieces.push(...flowing(head, body, layout, false, press));
      continue;
    }
    const next = parts[index + 1];
    const partner = next !== undefined && layoutOf(next.body) === layout ? sheetOf(next.body) : undefined;
    const pair = isHalf(sheet) && isHalf(partner) ? rowHeightOf([sheet, partner], text.width, text.height) : undefined;
    if (pair !== undefined && next !== undefined) {
      pieces.push(headed(head, piece(body, layout, 1, press, { rowHeight: pair }), true, press, true));
      pieces.push(headed(next.head, piece(next.body, layout, 1, press, { rowHeight: pair }), false, press, true));
      index += 1;
      continue;
    }
    const first = index === 0 && layout === 'portrait';
    const under = first ? rowHeightOf([sheet], text.width, text.height - openingWords) : undefined;
    const rowHeight = under ?? rowHeightOf([sheet], text.width, text.height) ?? leastRowHeight;
    pieces.push(headed(head, piece(body, layout, 1, press, { rowHeight }), under === undefined, press, true));
  }
  return pieces;
}

function sheetOf(nodes: readonly RootContent[]): ContainerDirective | undefined {
  return nodes.find((node): node is ContainerDirective => node.type === 'containerDirective' && node.name === 'sheet');
}

function isHalf(sheet: ContainerDirective | undefined): sheet is ContainerDirective {
  return sheet?.attributes?.['size'] === 'half';
}

function layoutOf(nodes: readonly RootContent[]): Layout {
  const lies = nodes.some((node) => node.type === 'containerDirective' && node.attributes?.['layout'] === 'landscape');
  return lies ? 'landscape' : 'portrait';
}

/** Words that flow over pages, lists in columns apart from the rest. */
function flowing(
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

function headed(head: Heading | undefined, { print, ...rest }: Piece, newPage: boolean, press: Press, tight = false): Piece {
  if (head === undefined) return { ...rest, newPage, print };
  return { ...rest, newPage, print: (breaks) => [printHeading(head, press, { newPage: breaks, tight }), ...print(false)] };
}

function piece(nodes: readonly RootContent[], layout: Layout, columns: 1 | 2, press: Press, more: Partial<Place> = {}): Piece {
  const width = columnWidth(pageOf(press.meta, layout), columns);
  return {
    layout,
    columns,
    newPage: false,
    print(): FileChild[] {
      let inside: Place['inside'] = 'text';
      return nodes.flatMap((node) => {
        if (node.type === 'heading' && node.depth === 3) inside = 'task';
        return printBlock(node, press, { width, inside, ...more });
      });
    },
  };
}
