import type { Element, ElementContent } from 'hast';
import { h } from 'hastscript';
import type { RootContent } from 'mdast';
import { wordOf } from '../../text/word-of.js';
import type { Ink } from './ink.js';

type Change = 'inserted' | 'deleted' | 'moved';

/** A block of a redline with a bar beside it and a word that says what happened to it; any other block as it is. */
export function markChange(node: RootContent, element: ElementContent, ink: Ink): ElementContent {
  const change = node.data?.change;
  return change === undefined || element.type !== 'element' ? element : mark(element, change, ink);
}

/** A list says it in its items, a row in its first cell, a table above itself. */
function mark(element: Element, change: Change, ink: Ink): Element {
  const word = h('span.change-word', wordOf(ink.meta, `print.${change}`));
  const { tagName, children } = element;
  if (tagName === 'ol' || tagName === 'ul')
    return { ...element, children: children.map((item) => (item.type === 'element' ? mark(item, change, ink) : item)) };
  if (tagName === 'table' || element.properties.className?.toString() === 'tablebox')
    return h('div.changed', { className: change }, [word, element]);
  const [first, ...rest] = children;
  if (tagName === 'tr' && first?.type === 'element')
    return withClass(element, change, [{ ...first, children: headed(word, first.children) }, ...rest]);
  return withClass(element, change, headed(word, children.map(quiet)));
}

/** Words that are said once for the whole block are not said again for a run of words that fills it. */
function quiet(child: ElementContent, _: number, all: readonly ElementContent[]): ElementContent {
  if (all.length > 1 || child.type !== 'element' || (child.tagName !== 'ins' && child.tagName !== 'del')) return child;
  return { ...child, children: child.children.slice(1, -1) };
}

function headed(word: Element, children: readonly ElementContent[]): ElementContent[] {
  return [word, { type: 'text', value: ' ' }, ...children];
}

function withClass(element: Element, change: Change, children: ElementContent[]): Element {
  const classes = [element.properties.className ?? []].flat().map(String);
  return { ...element, properties: { ...element.properties, className: [...classes, 'changed', change] }, children };
}

/** Words that were put in or taken out. Who cannot see the line through them hears where they begin and end. */
export function renderEdit(kind: 'inserted' | 'deleted', children: ElementContent[], ink: Ink): Element {
  const unseen = (text: string) => h('span.unseen', text);
  return h(kind === 'inserted' ? 'ins' : 'del', [unseen(`[${wordOf(ink.meta, `print.${kind}`)} `), ...children, unseen('] ')]);
}
