import type { Element } from 'hast';
import { h } from 'hastscript';
import { wordOf } from '../../text/word-of.js';
import type { Section } from '../../tree/nodes.js';
import type { Ink } from './ink.js';

/** The table of contents: chapters, each with its parts. */
export function renderContents(sections: readonly Section[], { meta }: Pick<Ink, 'meta'>): Element {
  const chapters = sections.filter(({ depth }) => depth === 1);
  const partsOf = ({ number }: Section) => sections.filter((each) => each.depth === 2 && each.number.startsWith(`${number}.`));
  return h('nav#contents.contents', { ariaLabel: wordOf(meta, 'print.contents') }, [
    h('p.contents-title', wordOf(meta, 'print.contents')),
    h(
      'ol',
      chapters.map((chapter) => h('li', [entry(chapter), ...list(partsOf(chapter))])),
    ),
  ]);
}

function list(parts: readonly Section[]): Element[] {
  return parts.length === 0
    ? []
    : [
        h(
          'ol',
          parts.map((part) => h('li', [entry(part)])),
        ),
      ];
}

function entry({ anchor, number, title }: Section): Element {
  return h('a', { href: `#${anchor}` }, [h('span.number', number), ' ', h('span', title)]);
}
