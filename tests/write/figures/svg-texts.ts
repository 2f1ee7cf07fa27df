import { widthOf } from '../../../src/write/figures/svg/measure-text.js';

/** A line of text of a drawing, with the room it takes. */
export interface DrawnText {
  words: string;
  size: number;
  left: number;
  right: number;
  top: number;
  bottom: number;
}

/** The texts of an SVG as they are drawn, in order. */
export function textsOf(svg: string): DrawnText[] {
  return [...svg.matchAll(/<text ([^>]*)>([^<]*)<\/text>/g)].map(([, attributes = '', content = '']) => {
    const attribute = (name: string) => new RegExp(`(?:^| )${name}="([^"]*)"`).exec(attributes)?.[1];
    const [x, y, size] = [Number(attribute('x')), Number(attribute('y')), Number(attribute('font-size'))];
    const words = content.replaceAll('&lt;', '<').replaceAll('&gt;', '>').replaceAll('&quot;', '"').replaceAll('&amp;', '&');
    const width = widthOf(words, { size, bold: attribute('font-weight') === '700' }) / 1.03;
    const left = { start: x, middle: x - width / 2, end: x - width }[attribute('text-anchor') ?? 'start'] ?? x;
    return { words, size, left, right: left + width, top: y - size * 0.7, bottom: y + size * 0.2 };
  });
}

/** Pairs of texts that lie on each other. */
export function overlaps(texts: readonly DrawnText[]): string[] {
  return texts.flatMap((a, index) =>
    texts
      .slice(index + 1)
      .filter((b) => a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom)
      .map((b) => `${a.words} | ${b.words}`),
  );
}

/** All words of a drawing in one line, so that it does not matter where they are broken. */
export function wordsOf(svg: string): string {
  return textsOf(svg)
    .map(({ words }) => words)
    .join(' ');
}
