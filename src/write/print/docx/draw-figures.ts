import { type FileChild, ImageRun, Paragraph } from 'docx';
import type { Root } from 'mdast';
import { drawSvg } from '../../figures/draw-svg.js';
import type { FigureNode } from '../../tree/nodes.js';
import { walk } from '../../tree/walk.js';
import type { Assets } from '../assets.js';
import { mm, pageOf } from './page.js';
import type { Place, Press } from './press.js';
import { plain } from './print-words.js';

/** A drawn figure. Its size is in pixels, 96 to the inch. */
export interface Drawing {
  svg: string;
  /** The same as a PNG, for readers that take no SVG. */
  png: Uint8Array;
  width: number;
  height: number;
}

/** Twips of a pixel. */
const perPixel = 15;

/** Pixels of the PNG for each pixel of the drawing: 192 to the inch. */
const sharpness = 2;

/** Draws all figures of a tree, by id. */
export async function drawFigures(tree: Root, assets: Assets): Promise<Map<string, Drawing>> {
  const figures: FigureNode[] = [];
  walk(tree, (node) => {
    if (node.type === 'figure') figures.push(node);
  });
  const drawings = new Map<string, Drawing>();
  for (const figure of figures) {
    const svg = await drawSvg(figure);
    const size = sizeOf(svg, figure.id);
    drawings.set(figure.id, { svg, ...size, png: assets.paint(svg, Math.round(size.width * sharpness)) });
  }
  return drawings;
}

/** A figure between the margins, with its caption below. */
export function printFigure({ id, alt, caption }: FigureNode, press: Press, { width: room }: Place): FileChild[] {
  const drawing = press.drawings.get(id);
  if (drawing === undefined) throw new RangeError(`the figure ${id} was not drawn`);
  const high = pageOf(press.meta, 'portrait').text.height - mm(30);
  const shrink = Math.min(1, room / perPixel / drawing.width, high / perPixel / drawing.height);
  const picture = new ImageRun({
    type: 'svg',
    data: Buffer.from(drawing.svg),
    fallback: { type: 'png', data: drawing.png },
    transformation: { width: Math.round(drawing.width * shrink), height: Math.round(drawing.height * shrink) },
    altText: { name: id, description: plain(alt) },
  });
  return [new Paragraph({ style: 'Figure', children: [picture] }), new Paragraph({ style: 'Caption', text: plain(caption) })];
}

/**
 * The size that an SVG states for itself, in pixels.
 *
 * @throws RangeError when it states none.
 */
export function sizeOf(svg: string, id: string): { width: number; height: number } {
  const [head = ''] = /<svg\b[^>]*>/.exec(svg) ?? [];
  const side = (name: string) => pixels(new RegExp(`\\b${name}="([\\d.]+)(pt|px|mm)?"`).exec(head));
  const [width, height] = [side('width'), side('height')];
  if (width !== undefined && height !== undefined) return { width, height };
  const [, wide, high] = /viewBox="[-\d.]+[ ,]+[-\d.]+[ ,]+([\d.]+)[ ,]+([\d.]+)"/.exec(head) ?? [];
  if (wide === undefined || high === undefined) throw new RangeError(`the figure ${id} has no size`);
  return { width: Number(wide), height: Number(high) };
}

function pixels(found: RegExpExecArray | null): number | undefined {
  if (found === null) return undefined;
  const perUnit = { pt: 96 / 72, mm: 96 / 25.4, px: 1 }[found[2] ?? 'px'] ?? 1;
  return Number(found[1]) * perUnit;
}
