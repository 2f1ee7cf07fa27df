import type { Link, Nodes, Parents, Root } from 'mdast';
import { isReferenceScheme } from '../text/markdown.js';
import type { Mark } from './nodes.js';
import { walk } from './walk.js';

/**
 * Turns the links with schemes of our own into what they stand for, in place. `[](id:rule:x)` and `[](shows:rule:x)` mark
 * the heading, row, item or paragraph around them, `[](is:why)` names its kind, `[](break:line)` breaks a line,
 * `[text](said:clinic)` keeps who said it, every reference becomes a node of its own.
 */
export function takeMarks(tree: Root): void {
  const links: { link: Link; parents: readonly Parents[] }[] = [];
  walk(tree, (node, parents) => {
    if (node.type === 'link') links.push({ link: node, parents });
  });
  for (const { link, parents } of links) replaceLink(link, parents);
}

function replaceLink(link: Link, parents: readonly Parents[]): void {
  const [scheme = '', ...rest] = link.url.split(':');
  const target = rest.join(':');
  const parent = parents.at(-1);
  if (parent === undefined) return;
  if (scheme === 'id' || scheme === 'shows') {
    markHolder(parents, { kind: rest[0] ?? '', id: rest.slice(1).join(':'), home: scheme === 'id' });
    put(parent, link);
  } else if (scheme === 'is') {
    const named = parent.type === 'tableCell' ? (parents.at(-2) ?? parent) : parent;
    named.data = { ...named.data, is: target };
    put(parent, link);
  } else if (scheme === 'break') put(parent, link, { type: 'break' });
  else if (scheme === 'said') put(parent, link, { type: 'said', by: target, children: link.children });
  else if (isReferenceScheme(scheme)) put(parent, link, { type: 'reference', scheme, target, children: link.children });
}

const holders = ['heading', 'tableRow', 'listItem', 'containerDirective'];

function markHolder(parents: readonly Parents[], mark: Mark): void {
  const holder = parents.findLast(({ type }) => holders.includes(type)) ?? parents.at(-1);
  if (holder === undefined) return;
  holder.data = { ...holder.data, marks: [...(holder.data?.marks ?? []), mark] };
}

function put(parent: Parents, old: Nodes, ...nodes: Nodes[]): void {
  const children: Nodes[] = parent.children;
  children.splice(children.indexOf(old), 1, ...nodes);
}
