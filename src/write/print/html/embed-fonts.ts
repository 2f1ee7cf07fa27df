import subsetFont from 'subset-font';
import type { Assets } from '../assets.js';
import { renameFont } from './rename-font.js';

/** The family under which the page asks for its own letters. */
export const family = 'Rulebook Sans';
/** The family for signs that it lacks. */
export const symbols = 'Rulebook Symbols';

const faces = [
  { face: 'regular', weight: 400, style: 'normal' },
  { face: 'italic', weight: 400, style: 'italic' },
  { face: 'bold', weight: 700, style: 'normal' },
  { face: 'boldItalic', weight: 700, style: 'italic' },
] as const;

/** What the layout of letters needs; alternates, fractions and the like only make the file larger. */
const features = ['kern', 'mark', 'mkmk', 'ccmp', 'locl', 'liga', 'tnum'];

/** Letters that a reader may type into the search, whether or not they are printed. */
const typed = Array.from({ length: 0x7f - 0x20 }, (_, i) => String.fromCharCode(0x20 + i)).join('');

/** From here on stand arrows, boxes and other signs, many of which a font of letters lacks. */
const firstSymbol = 0x2190;

/**
 * The style rules that carry the page's fonts: all faces with the letters that are printed, and no others.
 *
 * @param text everything that is printed, in any order.
 */
export async function embedFonts(fonts: Assets['fonts'], text: string): Promise<string> {
  const signs = signsOf(text + text.toUpperCase() + typed);
  const rules = [];
  for (const { face, weight, style } of faces)
    rules.push(rule(family, weight, style, await subset(renameFont(fonts[face], family), signs)));
  const special = signs.filter((sign) => (sign.codePointAt(0) ?? 0) >= firstSymbol);
  if (special.length > 0) rules.push(rule(symbols, 400, 'normal', await subset(fonts.symbols, special)));
  return rules.join('\n');
}

function signsOf(text: string): string[] {
  return [...new Set(text.normalize('NFC'))].sort();
}

async function subset(font: Uint8Array, signs: readonly string[]): Promise<string> {
  const options = { targetFormat: 'woff2', keepFeatures: features, noHinting: true } as const;
  return (await subsetFont(Buffer.from(font), signs.join(''), options)).toString('base64');
}

function rule(name: string, weight: number, style: string, base64: string): string {
  return `@font-face { font-family: "${name}"; font-weight: ${weight}; font-style: ${style}; src: url(data:font/woff2;base64,${base64}) format("woff2"); }`;
}
