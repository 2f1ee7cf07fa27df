import type { ElementContent } from 'hast';
import { h } from 'hastscript';
import type { PhrasingContent } from 'mdast';
import { sourceLanguage } from '../../../link/dictionary.js';
import { saidInSourceLanguage } from '../../text/markdown-safe.js';

/** Words of the tree as HTML. */
export function renderPhrase(nodes: readonly PhrasingContent[]): ElementContent[] {
  return nodes.flatMap(renderOne);
}

function renderOne(node: PhrasingContent): ElementContent | ElementContent[] {
  switch (node.type) {
    case 'text':
      return { type: 'text', value: node.value };
    case 'strong':
      return h('strong', renderPhrase(node.children));
    case 'emphasis':
      return h('em', renderPhrase(node.children));
    case 'inlineCode':
      return h('code', node.value);
    case 'break':
      return h('br');
    case 'link':
      return h('a', { href: node.url }, renderPhrase(node.children));
    case 'said':
      return node.by === saidInSourceLanguage
        ? h('span', { lang: sourceLanguage }, renderPhrase(node.children))
        : renderPhrase(node.children);
    case 'reference':
      return node.anchor === undefined
        ? h(`span.to-${node.scheme}`, renderPhrase(node.children))
        : h(`a.to-${node.scheme}`, { href: `#${node.anchor}` }, renderPhrase(node.children));
    case 'inserted':
      return h('ins', renderPhrase(node.children));
    case 'deleted':
      return h('del', renderPhrase(node.children));
    default:
      throw new RangeError(`no HTML for words of type ${node.type}`);
  }
}
