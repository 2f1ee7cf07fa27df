import type { ElementContent, Root } from 'hast';
import { h } from 'hastscript';
import rehypeStringify from 'rehype-stringify';
import { unified } from 'unified';
import { wordOf } from '../text/word-of.js';
import type { Writing } from '../writing.js';
import type { Assets } from './assets.js';
import { cardStyle } from './html/card-style.js';
import { ColumnWidths } from './html/column-widths.js';
import { contentPolicy } from './html/content-policy.js';
import { drawAll } from './html/draw-all.js';
import { embedFonts } from './html/embed-fonts.js';
import { flowStyle } from './html/flow-style.js';
import type { Ink } from './html/ink.js';
import { flows, pageStyle } from './html/page-style.js';
import { type Pieces, renderPieces } from './html/render-sections.js';
import { screenStyle } from './html/screen-style.js';
import { textStyle } from './html/text-style.js';

/**
 * Prints a writing as one HTML file that asks for nothing from outside: for the screen with search and contents at the
 * side, for paper with running heads, page numbers and each chapter on a page of its own.
 */
export async function printHtml(writing: Writing, assets: Assets): Promise<string> {
  const ink: Ink = { meta: writing.meta, widths: new ColumnWidths(), drawings: await drawAll(writing.tree) };
  const pieces = renderPieces(writing, ink);
  const flow = flows(writing.kind) ? [flowStyle] : [];
  const cards = writing.kind === 'cards' ? [cardStyle(writing.meta)] : [];
  const layout = [textStyle, screenStyle, pageStyle(writing), ...flow, ...cards, ink.widths.style()].join('\n');
  const body = bodyOf(pieces, ink);
  const letters = await embedFonts(assets.fonts, stringify({ type: 'root', children: body }) + layout);
  const style = `\n${letters}\n${layout}\n`;
  const script = `\n${assets.script}`;
  return `${stringify(pageOf(writing, { style, script, body }))}\n`;
}

interface Parts {
  style: string;
  script: string;
  body: ElementContent[];
}

function pageOf({ kind, meta }: Writing, { style, script, body }: Parts): Root {
  return {
    type: 'root',
    children: [
      { type: 'doctype' },
      h('html', { lang: meta.language }, [
        h('head', [
          h('meta', { charSet: 'utf-8' }),
          h('meta', { httpEquiv: 'Content-Security-Policy', content: contentPolicy(style, script) }),
          h('meta', { name: 'viewport', content: 'width=device-width, initial-scale=1' }),
          h('meta', { name: 'generator', content: `rulebook ${meta.tool}` }),
          h('title', `${meta.title}, ${meta.clinic}`),
          h('style', style),
        ]),
        h('body', { className: kind }, [...body, h('script', script)]),
      ]),
    ],
  };
}

function bodyOf({ front, side, text }: Pieces, { meta }: Ink): ElementContent[] {
  return [
    h('a.skip', { href: '#manual' }, wordOf(meta, 'print.skip-contents')),
    ...(front === undefined ? [] : [front]),
    ...(side === undefined ? [] : [side]),
    h('main#manual', { tabIndex: -1 }, text),
  ];
}

function stringify(page: Root): string {
  return unified().use(rehypeStringify, { allowDangerousHtml: true }).stringify(page);
}
