import type { Element, ElementContent } from 'hast';
import { h } from 'hastscript';
import type { BlockContent, Heading, List, ListItem, Paragraph, RootContent } from 'mdast';
import type { ContainerDirective } from 'mdast-util-directive';
import { wordOf } from '../../text/word-of.js';
import { anchorOf } from '../../tree/nodes.js';
import type { Ink } from './ink.js';
import { markChange } from './render-change.js';
import { renderFigure } from './render-figure.js';
import { renderPhrase } from './render-phrase.js';
import { renderTable } from './render-table.js';

/** One block of the tree as HTML, with its change where the writing is a redline. */
export function renderBlock(node: RootContent, ink: Ink): ElementContent {
  return markChange(node, renderPlain(node, ink), ink);
}

function renderPlain(node: RootContent, ink: Ink): ElementContent {
  switch (node.type) {
    case 'heading':
      return renderHeading(node, ink);
    case 'paragraph':
      return h(tagOf(node), { className: node.data?.is }, renderPhrase(node.children, ink));
    case 'list':
      return renderList(node, ink);
    case 'table':
      return renderTable(node, {}, ink);
    case 'blockquote':
      return h('blockquote', renderBlocks(node.children, ink));
    case 'thematicBreak':
      return h('hr');
    case 'figure':
      return renderFigure(node, ink);
    case 'containerDirective':
      return renderContainer(node, ink);
    default:
      throw new RangeError(`no HTML for a block of type ${node.type}`);
  }
}

function renderBlocks(nodes: readonly RootContent[], ink: Ink): ElementContent[] {
  return nodes.map((node) => renderBlock(node, ink));
}

/** The title of the whole writing is its first heading. */
function tagOf({ data }: Paragraph): 'h1' | 'p' {
  return data?.is === 'title' ? 'h1' : 'p';
}

function renderHeading({ depth, data, children }: Heading, ink: Ink): Element {
  const home = data?.marks?.find(({ home }) => home);
  const number = data?.number === undefined ? [] : [h('span.number', data.number), ' '];
  const title = h('span.heading', renderPhrase(children, ink));
  return h(`h${depth + 1}`, { id: home && anchorOf(home) }, [...number, title]);
}

function renderList({ ordered, start, children }: List, ink: Ink): Element {
  return h(
    ordered ? 'ol' : 'ul',
    { start: ordered && start !== null && start !== undefined && start !== 1 ? start : undefined },
    children.map((item) => markChange(item, renderItem(item, ink), ink)),
  );
}

function renderItem({ data, children }: ListItem, ink: Ink): Element {
  const home = data?.marks?.find(({ home }) => home);
  const [only] = children;
  const tight = children.length === 1 && only?.type === 'paragraph' && only.data?.is === undefined;
  return h('li', { id: home && anchorOf(home) }, tight ? renderPhrase(only.children, ink) : renderBlocks(children, ink));
}

function renderContainer({ name, attributes, children }: ContainerDirective, ink: Ink): Element {
  switch (name) {
    case 'table':
      return h(
        'div.tablebox',
        children.map((child) => renderTableOrBlock(child, attributes, ink)),
      );
    case 'sheet':
      return h('div.sheetbox', renderBlocks(children, ink));
    case 'caution':
      return h('div.caution', { role: 'note', ariaLabel: wordOf(ink.meta, 'print.caution') }, [
        h('p.word', wordOf(ink.meta, 'print.caution')),
        h('div.body', renderBlocks(children, ink)),
      ]);
    default:
      return h(`div.${name}`, renderBlocks(children, ink));
  }
}

function renderTableOrBlock(
  node: BlockContent | RootContent,
  attributes: ContainerDirective['attributes'],
  ink: Ink,
): ElementContent {
  if (node.type !== 'table') return renderBlock(node, ink);
  const look = { look: attributes?.look ?? undefined, widths: attributes?.widths ?? undefined };
  return markChange(node, renderTable(node, look, ink), ink);
}
