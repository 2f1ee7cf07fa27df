import { sourceLanguage, untranslatedMark } from '../../link/dictionary.js';
import { escapePunctuation, type Markdown, referenceSchemes, tidy } from './markdown.js';

const reference = new RegExp(String.raw`(\[\]\((?:${referenceSchemes.join('|')}):[\w./-]+\))`);

/** Text as Markdown that reads as exactly that text and nothing else, on one line. */
export function markdownSafe(text: string): string {
  const safe = escapePunctuation(tidy(text).trim());
  return isUntranslated(text) ? inSourceLanguage(safe) : safe;
}

/**
 * What a pack says: references, `*emphasis*` and `**strong**` keep their meaning, everything else is text.
 */
export function ruleText(text: string): Markdown {
  const piece = isUntranslated(text) ? (words: string) => inSourceLanguage(keepEmphasis(words)) : keepEmphasis;
  return { markdown: splitAtReferences(text, piece) };
}

/**
 * What the clinic or a maker says: references keep their meaning, everything else is text. The text is marked with who
 * said it, so that the gate knows its numbers do not come from the rules.
 */
export function saidText(text: string, by: string): Markdown {
  return { markdown: splitAtReferences(text, (piece) => markSaid(piece, by)) };
}

/** A text of the rulebook, read as its layer asks. */
export function textOfLayer(text: string, layer: string): Markdown {
  return layer === 'clinic' ? saidText(text, 'clinic') : ruleText(text);
}

/** A value that comes out of the rulebook, marked with what it comes from. */
export function said(value: string, by: string): Markdown {
  return { markdown: markSaid(tidy(value).trim(), by) };
}

/** Who says what nobody has translated: the language of the packs, so that it is read aloud as such. */
export const saidInSourceLanguage = `language-${sourceLanguage}`;

function isUntranslated(text: string): boolean {
  return text.startsWith(untranslatedMark);
}

function inSourceLanguage(markdown: string): string {
  return markdown.trim() === '' ? markdown : `[${markdown}](said:${saidInSourceLanguage})`;
}

function splitAtReferences(text: string, otherwise: (piece: string) => string): string {
  return tidy(text)
    .trim()
    .split(reference)
    .map((piece, index) => (index % 2 === 1 ? piece : otherwise(piece)))
    .join('');
}

function markSaid(text: string, by: string): string {
  return text.trim() === '' ? text : `[${escapePunctuation(text)}](said:${escapePunctuation(by)})`;
}

function keepEmphasis(text: string): string {
  return text
    .split(/(\*\*[^*\s](?:[^*]*[^*\s])?\*\*|\*[^*\s](?:[^*]*[^*\s])?\*)/)
    .map((piece, index) => (index % 2 === 1 ? emphasize(piece) : escapePunctuation(piece)))
    .join('');
}

function emphasize(piece: string): string {
  const stars = piece.startsWith('**') ? '**' : '*';
  return `${stars}${escapePunctuation(piece.slice(stars.length, -stars.length))}${stars}`;
}
