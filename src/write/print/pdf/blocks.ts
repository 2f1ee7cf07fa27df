import type { List, ListItem, Paragraph, RootContent } from 'mdast';
import type { ContainerDirective } from 'mdast-util-directive';
import { toString as textOf } from 'mdast-util-to-string';
import { anchorOf } from '../../tree/nodes.js';
import type { Block, HeadingData, Item, Piece } from './data.js';
import { type Ink, takeAnchors } from './ink.js';
import { areShort, rowsOf } from './rows.js';
import { isShort, tableOf } from './table.js';
import { splitLabel, trimmed, wordsOf } from './words.js';

/** Makes the blocks of a node. */
export type BlockMaker = (node: RootContent) => Block[];

/** Nodes of the tree as blocks. */
export function blocksOf(nodes: readonly RootContent[], ink: Ink): Block[] {
  return nodes.flatMap((node, index) => {
    const change = node.data?.change;
    const blocks = blocksOfOne(node, ink, nodes[index + 1]);
    return change === undefined ? blocks : blocks.map((block) => ({ ...block, change }));
  });
}

function blocksOfOne(node: RootContent, ink: Ink, next?: RootContent): Block[] {
  switch (node.type) {
    case 'heading':
      return [headingOf(node, ink)];
    case 'paragraph':
      return paragraphOf(node, ink, next);
    case 'list':
      return [listOf(node, ink, next)];
    case 'table':
      return [tableOf(node, ink)];
    case 'blockquote':
      return [{ t: 'quote', blocks: blocksOf(node.children, ink) }];
    case 'thematicBreak':
      return [{ t: 'rule' }];
    case 'figure': {
      const svg = ink.drawings.get(node.id);
      if (svg === undefined) throw new RangeError(`no drawing of the figure \`${node.id}\``);
      return [...places(node, ink), { t: 'figure', svg, alt: node.alt, caption: node.caption }];
    }
    case 'containerDirective':
      return [...places(node, ink), ...containerOf(node, ink)];
    case 'leafDirective':
      return node.name === 'contents' ? [{ t: 'contents' }] : [];
    case 'footnoteDefinition':
      return [];
    default:
      throw new RangeError(`no PDF for a block of type ${node.type}`);
  }
}

function places(node: RootContent, ink: Ink): Block[] {
  return takeAnchors(node, ink).map((anchor) => ({ t: 'here', anchor }));
}

/** A heading. Its anchor is given whether or not something leads to it, for the contents do. */
export function headingOf(node: RootContent & { type: 'heading' }, ink: Ink): HeadingData {
  const anchors = (node.data?.marks ?? []).flatMap((mark) => (mark.home ? [anchorOf(mark)] : []));
  const anchor = anchors.find((each) => !ink.placed.has(each));
  if (anchor !== undefined) ink.placed.add(anchor);
  const others = takeAnchors(node, ink).map((each): Piece => ({ t: 'here', anchor: each }));
  return {
    t: 'heading',
    level: node.depth,
    number: node.data?.number ?? null,
    anchor: anchor ?? null,
    c: [...others, ...trimmed(wordsOf(node.children, ink))],
  };
}

/** What a paragraph in front of it stays with. */
const followers = ['list', 'table', 'containerDirective', 'figure'];

function paragraphOf(node: Paragraph, ink: Ink, next: RootContent | undefined): Block[] {
  const here = takeAnchors(node, ink).map((anchor): Piece => ({ t: 'here', anchor }));
  const c = [...here, ...wordsOf(node.children, ink)];
  const is = node.data?.is ?? null;
  const plain: Block = { t: 'paragraph', is, leads: next !== undefined && followers.includes(next.type), c };
  if (is === 'often')
    return [{ ...plain, c: c.flatMap((piece) => (typeof piece !== 'string' && piece.t === 'strong' ? piece.c : [piece])) }];
  if (is !== 'done') return [plain];
  const { name, c: rest } = splitLabel(c);
  return name === undefined ? [plain] : [{ t: 'labelled', keep: isShort(textOf(node)), name, c: [...here, ...rest] }];
}

function listOf({ ordered, start, children }: List, ink: Ink, next: RootContent | undefined): Block {
  const leads = next?.type === 'paragraph' && next.data?.is === 'done';
  const items = children.map((item) => itemOf(item, ink, (node) => blocksOf([node], ink)));
  return { t: 'list', ordered: ordered === true, start: start ?? 1, leads, items };
}

/** An item of a list: words alone where it is one plain paragraph. */
export function itemOf(item: ListItem, ink: Ink, make: BlockMaker): Item {
  const [anchor = null] = takeAnchors(item, ink);
  const [only] = item.children;
  const about = { anchor, change: item.data?.change ?? null, keep: isShort(textOf(item)) };
  if (item.children.length === 1 && only?.type === 'paragraph' && only.data?.is === undefined)
    return { ...about, c: wordsOf(only.children, ink), blocks: [] };
  return { ...about, c: null, blocks: item.children.flatMap(make) };
}

function containerOf(node: ContainerDirective, ink: Ink): Block[] {
  const { name, attributes, children } = node;
  const make: BlockMaker = (child) => blocksOf([child], ink);
  switch (name) {
    case 'table':
      return children.flatMap((child): Block[] =>
        child.type === 'table'
          ? [tableOf(child, ink, attributes?.['look'] ?? undefined, attributes?.['widths'] ?? undefined)]
          : make(child),
      );
    case 'titlepage':
    case 'caution':
      return [{ t: name, blocks: children.flatMap(make) }];
    case 'note':
      return [{ t: name, keep: isShort(textOf(node)), blocks: children.flatMap(make) }];
    case 'answers':
      return [{ t: 'rows', look: 'answers', narrow: false, rows: rowsOf(children, ink, make) }];
    case 'columns': {
      const rows = rowsOf(children, ink, make);
      return [{ t: 'rows', look: attributes?.['look'] === 'trace' ? 'trace' : 'terms', narrow: areShort(rows), rows }];
    }
    case 'opening':
      return openingOf(children, ink);
    default:
      return children.flatMap(make);
  }
}

/** Who, where, what to wear, what to have ready. */
function openingOf(children: readonly RootContent[], ink: Ink): Block[] {
  const items = children.flatMap((child) => (child.type === 'list' ? child.children : []));
  const rows = items.map((item) => {
    const words = item.children.flatMap((child) => (child.type === 'paragraph' ? wordsOf(child.children, ink) : []));
    const { name = [], c } = splitLabel(words);
    return { name, c };
  });
  return [{ t: 'opening', rows }];
}
