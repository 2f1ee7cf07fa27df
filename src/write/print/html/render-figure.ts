import type { Element } from 'hast';
import { h } from 'hastscript';
import type { FigureNode } from '../../tree/nodes.js';
import type { Ink } from './ink.js';

/** A piece of markup of our own making, printed as it is. */
export interface Raw {
  type: 'raw';
  value: string;
}

declare module 'hast' {
  interface RootContentMap {
    raw: Raw;
  }
  interface ElementContentMap {
    raw: Raw;
  }
}

/** A figure with its drawing in the page, named and described for who cannot see it. */
export function renderFigure({ id, caption, alt }: FigureNode, ink: Ink): Element {
  const drawing = ink.drawings.get(id);
  if (drawing === undefined) throw new RangeError(`no drawing of the figure \`${id}\``);
  return h('figure', { id: `figure-${id}` }, [
    h('div.drawing', [{ type: 'raw', value: describe(withoutStyles(drawing), id, caption, alt) }]),
    h('figcaption', caption),
  ]);
}

/** Puts a title and a description at the head of a drawing, in place of any that it has. */
function describe(svg: string, id: string, title: string, alt: string): string {
  const [titleId, altId] = [`figure-${id}-title`, `figure-${id}-alt`];
  const bare = svg
    .slice(svg.indexOf('<svg'))
    .replace(/<(title|desc)\b[^>]*>.*?<\/\1>/gs, '')
    .replace(/^<svg\b[^>]*>/, (tag) => tag.replace(/\s(?:role|aria-[a-z]+)="[^"]*"/g, ''));
  const head = `<title id="${titleId}">${escapeText(title)}</title><desc id="${altId}">${escapeText(alt)}</desc>`;
  return bare.replace(
    /^<svg\b([^>]*)>/,
    (_, rest: string) => `<svg role="img" aria-labelledby="${titleId} ${altId}"${rest}>${head}`,
  );
}

/** In the letters of the page, and with styles of single elements as attributes, which the page's security policy lets through. */
function withoutStyles(svg: string): string {
  return svg.replace(/\sfont-family="[^"]*"/g, '').replace(/\sstyle="([^"]*)"/g, (_, style: string) =>
    style
      .split(';')
      .map((rule) => rule.split(':').map((part) => part.trim()))
      .map(([name, value]) => (name && value ? ` ${name}="${value}"` : ''))
      .join(''),
  );
}

function escapeText(text: string): string {
  return text.replace(/[&<>"]/g, (sign) => `&#${sign.charCodeAt(0)};`);
}
