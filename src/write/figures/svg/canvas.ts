import { tidy } from '../../text/markdown.js';
import { type TextStyle, widthOf } from './measure-text.js';

/** Width of every drawing in points: it is printed 165 mm wide, so a point of the drawing is a point on paper. */
export const drawingWidth = 468;

/** Smallest type that is drawn, in points. */
export const smallType = 8;

/** From one line of text to the next, for a type size. */
export function leading(size: number): number {
  return size * 1.22;
}

export type Anchor = 'start' | 'middle' | 'end';

export interface Stroke {
  /** Thickness of the line in points. */
  width?: number;
  /** Lengths of dash and gap. */
  dash?: string;
}

export interface Point {
  x: number;
  y: number;
}

/** Draws with pen and type, black on white, y downward, in points. What is drawn later lies on top. */
export class Canvas {
  private readonly parts: string[] = [];

  /** One line of text; `y` is its base line. */
  text(words: string, x: number, y: number, style: TextStyle & { italic?: boolean; anchor?: Anchor; on?: boolean }): this {
    const { size, bold, italic, anchor = 'start', on } = style;
    if (words.trim() === '') return this;
    if (on === true) this.blank(words, x, y, style, anchor);
    const attributes = [
      ` x="${say(x)}" y="${say(y)}" font-size="${say(size)}"`,
      bold === true ? ' font-weight="700"' : '',
      italic === true ? ' font-style="italic"' : '',
      anchor === 'start' ? '' : ` text-anchor="${anchor}"`,
    ];
    this.parts.push(`<text${attributes.join('')}>${escapeXml(words)}</text>`);
    return this;
  }

  /** Lines of text one below the other; `y` is the top of the first. Returns where the text ends. */
  lines(lines: readonly string[], x: number, y: number, style: Parameters<Canvas['text']>[3]): number {
    const step = leading(style.size);
    lines.forEach((each, index) => this.text(each, x, y + index * step + style.size * 0.94, style));
    return y + lines.length * step;
  }

  box(x: number, y: number, width: number, height: number, { width: thick = 0.75, dash }: Stroke = {}, round = 0): this {
    const corner = round === 0 ? '' : ` rx="${say(round)}"`;
    const at = `x="${say(x)}" y="${say(y)}" width="${say(width)}" height="${say(height)}"${corner}`;
    this.parts.push(`<rect ${at} fill="#fff" stroke="#000" stroke-width="${say(thick)}"${dashOf(dash)}/>`);
    return this;
  }

  /** A black bar. */
  bar(x: number, y: number, width: number, height: number): this {
    this.parts.push(`<rect x="${say(x)}" y="${say(y)}" width="${say(width)}" height="${say(height)}"/>`);
    return this;
  }

  line(points: readonly Point[], { width: thick = 0.75, dash }: Stroke = {}): this {
    const path = points.map(({ x, y }) => `${say(x)},${say(y)}`).join(' ');
    this.parts.push(`<polyline points="${path}" fill="none" stroke="#000" stroke-width="${say(thick)}"${dashOf(dash)}/>`);
    return this;
  }

  /** A line with a head at its last point. */
  arrow(points: readonly Point[], { width: thick = 1, dash }: Stroke = {}): this {
    const [end, before] = [points.at(-1), points.at(-2)];
    if (end === undefined || before === undefined) return this;
    const length = Math.hypot(end.x - before.x, end.y - before.y);
    if (length === 0) return this;
    const [dx, dy] = [(end.x - before.x) / length, (end.y - before.y) / length];
    const [long, wide] = [6, 2.6];
    const neck = { x: end.x - dx * long, y: end.y - dy * long };
    this.line([...points.slice(0, -1), { x: neck.x + dx, y: neck.y + dy }], {
      width: thick,
      ...(dash !== undefined && { dash }),
    });
    const corners = [end, { x: neck.x - dy * wide, y: neck.y + dx * wide }, { x: neck.x + dy * wide, y: neck.y - dx * wide }];
    this.parts.push(`<polygon points="${corners.map(({ x, y }) => `${say(x)},${say(y)}`).join(' ')}"/>`);
    return this;
  }

  /** The drawing so far as SVG that stands by itself: no ids, no style sheet, nothing from outside. */
  svg(height: number): string {
    const size = `width="165mm" height="${say((height * 165) / drawingWidth)}mm" viewBox="0 0 ${drawingWidth} ${say(height)}"`;
    const type = 'font-family="Source Sans 3" fill="#000"';
    return `<svg xmlns="http://www.w3.org/2000/svg" ${size} ${type}>${this.parts.join('')}</svg>`;
  }

  /** White behind a text, so that a line does not run through it. */
  private blank(words: string, x: number, y: number, style: TextStyle, anchor: Anchor): void {
    const width = widthOf(words, style) + 4;
    const left = anchor === 'start' ? x - 2 : anchor === 'middle' ? x - width / 2 : x - width + 2;
    const at = `x="${say(left)}" y="${say(y - style.size * 0.9)}" width="${say(width)}" height="${say(leading(style.size))}"`;
    this.parts.push(`<rect ${at} fill="#fff"/>`);
  }
}

function dashOf(dash: string | undefined): string {
  return dash === undefined ? '' : ` stroke-dasharray="${dash}"`;
}

/** A number to the hundredth, without trailing zeros. */
function say(value: number): string {
  return String(Math.round(value * 100) / 100);
}

/** Text as it stands in XML, without the characters that XML cannot hold. */
export function escapeXml(text: string): string {
  return tidy(text)
    .replace(/[\ufffe\uffff]/g, ' ')
    .replaceAll('&', '&amp;')
    .replaceAll('<', '&lt;')
    .replaceAll('>', '&gt;')
    .replaceAll('"', '&quot;');
}
