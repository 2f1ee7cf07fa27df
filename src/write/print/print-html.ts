import type { ElementContent, Root } from 'hast';
import { h } from 'hastscript';
import rehypeStringify from 'rehype-stringify';
import { unified } from 'unified';
import type { Writing } from '../writing.js';
import { pageStyle } from './html/page-style.js';
import { renderSections } from './html/render-sections.js';
import { screenStyle } from './html/screen-style.js';
import { textStyle } from './html/text-style.js';

/**
 * Prints a manual as one HTML file that asks for nothing from outside: for the screen with the contents at the side, for
 * paper with running heads, page numbers and each chapter on a page of its own.
 */
export function printHtml(manual: Writing): string {
  const { meta } = manual;
  const style = [textStyle, screenStyle, pageStyle(manual)].join('\n');
  const page: Root = {
    type: 'root',
    children: [
      { type: 'doctype' },
      h('html', { lang: meta.language }, [
        h('head', [
          h('meta', { charSet: 'utf-8' }),
          h('meta', { name: 'viewport', content: 'width=device-width, initial-scale=1' }),
          h('meta', { name: 'generator', content: `rulebook ${meta.tool}` }),
          h('title', `${meta.title}, ${meta.clinic}`),
          h('style', style),
        ]),
        h('body', body(manual)),
      ]),
    ],
  };
  return `${unified().use(rehypeStringify).stringify(page)}\n`;
}

function body(manual: Writing): ElementContent[] {
  return [h('a.skip', { href: '#manual' }, 'Skip the contents'), h('main#manual', { tabIndex: -1 }, renderSections(manual))];
}
