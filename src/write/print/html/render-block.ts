import type { Element, ElementContent } from 'hast';
import { h } from 'hastscript';
import type { BlockContent, Heading, List, ListItem, Paragraph, RootContent } from 'mdast';
import type { ContainerDirective } from 'mdast-util-directive';
import type { ManualMeta } from '../../model/model-title.js';
import { anchorOf } from '../../tree/nodes.js';
import { renderPhrase } from './render-phrase.js';
import { renderTable } from './render-table.js';

/** One block of the tree as HTML. */
export function renderBlock(node: RootContent, meta: ManualMeta): ElementContent {
  switch (node.type) {
    case 'heading':
      return renderHeading(node);
    case 'paragraph':
      return h(tagOf(node), { className: node.data?.is }, renderPhrase(node.children));
    case 'list':
      return renderList(node, meta);
    case 'table':
      return renderTable(node, {});
    case 'blockquote':
      return h('blockquote', renderBlocks(node.children, meta));
    case 'thematicBreak':
      return h('hr');
    case 'containerDirective':
      return renderContainer(node, meta);
    case 'figure':
      return h('figure', [h('p', node.alt), h('figcaption', node.caption)]);
    default:
      throw new RangeError(`no HTML for a block of type ${node.type}`);
  }
}

function renderBlocks(nodes: readonly RootContent[], meta: ManualMeta): ElementContent[] {
  return nodes.map((node) => renderBlock(node, meta));
}

/** The title of the whole manual is its first heading. */
function tagOf({ data }: Paragraph): 'h1' | 'p' {
  return data?.is === 'title' ? 'h1' : 'p';
}

function renderHeading({ depth, data, children }: Heading): Element {
  const home = data?.marks?.find(({ home }) => home);
  const number = data?.number === undefined ? [] : [h('span.number', data.number), ' '];
  const title = h('span.heading', renderPhrase(children));
  return h(`h${depth + 1}`, { id: home && anchorOf(home) }, [...number, title]);
}

function renderList({ ordered, children }: List, meta: ManualMeta): Element {
  return h(
    ordered ? 'ol' : 'ul',
    children.map((item) => renderItem(item, meta)),
  );
}

function renderItem({ data, children }: ListItem, meta: ManualMeta): Element {
  const home = data?.marks?.find(({ home }) => home);
  const [only] = children;
  const tight = children.length === 1 && only?.type === 'paragraph' && only.data?.is === undefined;
  return h('li', { id: home && anchorOf(home) }, tight ? renderPhrase(only.children) : renderBlocks(children, meta));
}

function renderContainer({ name, attributes, children }: ContainerDirective, meta: ManualMeta): Element {
  switch (name) {
    case 'table':
      return h(
        'div.tablebox',
        children.map((child) => renderTableOrBlock(child, attributes, meta)),
      );
    case 'sheet':
      return h('div.sheetbox', renderBlocks(children, meta));
    case 'caution':
      return h('div.caution', { role: 'note' }, [h('p.word', 'Caution'), h('div.body', renderBlocks(children, meta))]);
    default:
      return h(`div.${name}`, renderBlocks(children, meta));
  }
}

function renderTableOrBlock(
  node: BlockContent | RootContent,
  attributes: ContainerDirective['attributes'],
  meta: ManualMeta,
): ElementContent {
  if (node.type !== 'table') return renderBlock(node, meta);
  return renderTable(node, { look: attributes?.look ?? undefined, widths: attributes?.widths ?? undefined });
}
