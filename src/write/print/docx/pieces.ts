import type { Heading, RootContent } from 'mdast';
import type { Writing } from '../../writing.js';
import { groupPages } from '../html/page-groups.js';
import type { Piece } from './lay-out.js';
import { flowing, piece } from './make-piece.js';
import { containerIn, nest } from './nest.js';
import type { Press } from './press.js';
import { copyNote, printContents } from './print-front.js';
import { copyNoteRoom, openingWords, partPieces } from './sheet-pieces.js';

/** The writing as pieces of pages: the front, chapters on pages of their own, sheets that fill one, lists in columns. */
export function piecesOf(writing: Writing, press: Press): Piece[] {
  const { tree } = writing;
  const opens = pageOpeners(writing);
  const [front, ...chapters] = nest(tree.children, 1);
  return [
    ...frontPieces(front?.body ?? [], press),
    ...chapters.flatMap(({ head, body }, index) => {
      const [intro, ...parts] = nest(body, 2);
      const before = flowing(head, intro?.body ?? [], 'portrait', opens(head), press);
      const above =
        index === 0 && containerIn(front?.body ?? [], 'titlepage') === undefined ? openingWords + copyNoteRoom : openingWords;
      return [...before, ...partPieces(parts, press, above)];
    }),
  ];
}

/** Whether a chapter begins a page: most in a manual, each of a set of cards. Notices, redlines and forms run on. */
function pageOpeners({ kind, tree, sections, meta }: Writing): (head: Heading | undefined) => boolean {
  const first = tree.children.find((node) => node.type === 'heading');
  if (kind === 'cards') return (head) => head !== first;
  if (kind !== 'manual') return () => false;
  const opens = new Set(groupPages(sections, meta).flatMap(({ chapters: [first] }) => first?.number ?? []));
  return (head) => opens.has(head?.data?.number ?? '');
}

/** The title page ends with the note on this copy; without a title page the note comes first of all. */
function frontPieces(nodes: readonly RootContent[], press: Press): Piece[] {
  const isContents = (node: RootContent) => node.type === 'leafDirective' && node.name === 'contents';
  const title = containerIn(nodes, 'titlepage');
  const note: Piece = { layout: 'portrait', columns: 1, newPage: false, print: () => copyNote(press, nodes.some(isContents)) };
  const rest = nodes.filter((node) => node !== title);
  return [
    ...(title === undefined ? [note] : [piece([title], 'portrait', 1, press), note]),
    ...rest.map((node): Piece => {
      if (!isContents(node)) return piece([node], 'portrait', 1, press);
      return { layout: 'portrait', columns: 1, newPage: true, print: (newPage) => printContents(press, newPage) };
    }),
  ];
}
