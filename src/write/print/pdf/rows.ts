import type { ListItem, RootContent } from 'mdast';
import { toString as textOf } from 'mdast-util-to-string';
import { type BlockMaker, itemOf } from './blocks.js';
import type { Block, Row } from './data.js';
import { type Ink, takeAnchors } from './ink.js';
import { isShort } from './table.js';
import { splitLabel, wordsOf } from './words.js';

/** What opens a row: the kinds of paragraph that are labels of what follows them. */
const opening = ['answer', 'caption'];

/**
 * Blocks as rows of a label and what belongs to it. Answers and captions are labels of the lists behind them; a paragraph
 * or an item of a list that begins with strong words has these as its label.
 */
export function rowsOf(nodes: readonly RootContent[], ink: Ink, make: BlockMaker): Row[] {
  const rows: Row[] = [];
  const dense = nodes.some((node) => isDense(node, 16));
  const grow = (node: RootContent) => {
    const last = rows.at(-1);
    const blocks = make(node);
    if (last === undefined) rows.push({ ...emptyRow(node, ink), blocks });
    else {
      last.blocks.push(...blocks);
      last.keep &&= isShort(textOf(node));
      last.dense ||= isDense(node, dense ? 1 : 16);
    }
  };
  for (const node of nodes) {
    const labelled = rows.length > 0 && opening.includes(kindOf(nodes[nodes.indexOf(node) - 1]) ?? '');
    if (node.type === 'paragraph' && opening.includes(node.data?.is ?? ''))
      rows.push({ ...emptyRow(node, ink), name: wordsOf(node.children, ink) });
    else if (node.type === 'paragraph') rows.push(paragraphRow(node, ink) ?? { ...emptyRow(node, ink), blocks: make(node) });
    else if (node.type === 'list' && !labelled) for (const item of node.children) rows.push(itemRow(item, ink, make));
    else grow(node);
  }
  return rows;
}

/** Whether its lines are short; they must be many as well, where nothing beside it is set like that. */
function isDense(node: RootContent, atLeast: number): boolean {
  return node.type === 'list' && node.children.length >= atLeast && textOf(node).length / node.children.length <= 70;
}

/** Whether labels are as short as numbers of sections. */
export function areShort(rows: readonly Row[]): boolean {
  return rows.every(({ name }) => lengthOf(name) <= 8);
}

function lengthOf(words: Row['name']): number {
  return words.reduce((sum, piece) => sum + (typeof piece === 'string' ? piece.length : 'c' in piece ? lengthOf(piece.c) : 0), 0);
}

function kindOf(node: RootContent | undefined): string | undefined {
  return node?.type === 'paragraph' ? node.data?.is : undefined;
}

function emptyRow(node: RootContent | ListItem, ink: Ink): Row {
  const [anchor = null] = takeAnchors(node, ink);
  return { anchor, change: node.data?.change ?? null, keep: isShort(textOf(node)), dense: false, name: [], blocks: [] };
}

function paragraphRow(node: RootContent & { type: 'paragraph' }, ink: Ink): Row | undefined {
  const { name, c } = splitLabel(wordsOf(node.children, ink));
  return name && { ...emptyRow(node, ink), name, blocks: paragraph(c) };
}

/** `- **Label** the rest`. */
function itemRow(item: ListItem, ink: Ink, make: BlockMaker): Row {
  const [only] = item.children;
  if (item.children.length === 1 && only?.type === 'paragraph') {
    const { name, c } = splitLabel(wordsOf(only.children, ink));
    if (name !== undefined) return { ...emptyRow(item, ink), name, blocks: paragraph(c) };
  }
  const row = emptyRow(item, ink);
  return { ...row, blocks: [{ t: 'list', ordered: false, start: 1, leads: false, items: [itemOf(item, ink, make)] }] };
}

function paragraph(c: Row['name']): Block[] {
  return [{ t: 'paragraph', is: null, leads: false, c }];
}
