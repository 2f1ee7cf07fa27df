import type { ElementContent } from 'hast';
import { h } from 'hastscript';
import type { PhrasingContent } from 'mdast';

import { sourceLanguage } from '../../../link/dictionary.js';
import { saidInSourceLanguage } from '../../text/markdown-safe.js';

import type { Ink } from './ink.js';
import { renderEdit } from './render-change.js';

/** Words of the tree as HTML. */
export function renderPhrase(nodes: readonly PhrasingContent[], ink: Ink): ElementContent[] {
  return nodes.flatMap((node) => renderOne(node, ink));
}

function renderOne(node: PhrasingContent, ink: Ink): ElementContent | ElementContent[] {
  switch (node.type) {
    case 'text':
      return { type: 'text', value: node.value };
    case 'strong':
      return h('strong', renderPhrase(node.children, ink));
    case 'emphasis':
      return h('em', renderPhrase(node.children, ink));
    case 'inlineCode':
      return h('code', node.value);
    case 'break':
      return h('br');
    case 'link':
      return h('a', { href: node.url }, renderPhrase(node.children, ink));
    case 'said':
      return node.by === saidInSourceLanguage
        ? h('span', { lang: sourceLanguage }, renderPhrase(node.children, ink))
        : renderPhrase(node.children, ink);
    case 'inserted':
    case 'deleted':
      return renderEdit(node.type, renderPhrase(node.children, ink), ink);
    case 'reference':
      return node.anchor === undefined
        ? h(`span.to-${node.scheme}`, renderPhrase(node.children, ink))
        : h(`a.to-${node.scheme}`, { href: `#${node.anchor}` }, renderPhrase(node.children, ink));
    default:
      throw new RangeError(`no HTML for words of type ${node.type}`);
  }
}
