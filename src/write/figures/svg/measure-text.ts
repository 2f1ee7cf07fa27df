import { tidy } from '../../text/markdown.js';

/** Widths of the ASCII characters from the space on in Source Sans 3, in thousandths of the type size. */
const widths = [
  200, 289, 426, 497, 497, 824, 609, 249, 303, 303, 418, 497, 249, 311, 249, 350, 497, 497, 497, 497, 497, 497, 497, 497, 497,
  497, 249, 249, 497, 497, 497, 425, 847, 544, 588, 571, 615, 527, 494, 617, 652, 263, 480, 579, 486, 727, 647, 664, 566, 664,
  569, 534, 536, 645, 515, 786, 513, 476, 539, 303, 350, 303, 497, 500, 542, 504, 553, 456, 555, 496, 292, 504, 544, 246, 247,
  495, 255, 829, 547, 542, 555, 555, 347, 419, 338, 544, 467, 719, 446, 467, 425, 303, 241, 303, 497,
];

/** Bold letters are a little wider. */
const boldFactor = 1.07;

/** Another font may stand in for Source Sans 3: what is drawn around a text leaves this much more room. */
const slack = 1.03;

/** How a text is set. */
export interface TextStyle {
  /** Type size, in points of the drawing. */
  size: number;
  bold?: boolean;
}

/** About how wide a text is, in points: a little more than in Source Sans 3. */
export function widthOf(text: string, { size, bold }: TextStyle): number {
  let sum = 0;
  for (const letter of text.normalize('NFD')) sum += widthOfLetter(letter);
  return (sum / 1000) * size * slack * (bold === true ? boldFactor : 1);
}

/** In thousandths of the type size. An accent takes no room of its own; letters of other scripts count as a full square. */
function widthOfLetter(letter: string): number {
  const code = letter.codePointAt(0) ?? 0;
  const known = widths[code - 32];
  if (known !== undefined) return known;
  if (/\p{Mn}/u.test(letter)) return 0;
  return code < 0x2000 ? 620 : 1000;
}

/** Lines no wider than asked: broken between words, and within a word only where it is wider than a line by itself. */
export function wrapText(text: string, width: number, style: TextStyle): string[] {
  const lines: string[] = [];
  let line = '';
  for (const word of tidy(text)
    .trim()
    .split(' ')
    .flatMap((each) => cutWord(each, width, style))) {
    const longer = line === '' ? word : `${line} ${word}`;
    if (line !== '' && widthOf(longer, style) > width) {
      lines.push(line);
      line = word;
    } else line = longer;
  }
  return line === '' ? lines : [...lines, line];
}

function cutWord(word: string, width: number, style: TextStyle): string[] {
  if (widthOf(word, style) <= width) return [word];
  const [front, back] = word.split(/(?<=[-/])(?=[^-/]+$)/);
  if (front !== undefined && back !== undefined && widthOf(front, style) <= width) return [front, ...cutWord(back, width, style)];
  const pieces: string[] = [];
  let piece = '';
  for (const letter of word) {
    if (piece !== '' && widthOf(piece + letter, style) > width) {
      pieces.push(piece);
      piece = '';
    }
    piece += letter;
  }
  return [...pieces, piece];
}
