/** Text that is already Markdown and goes into a template as it is. A plain string is text and is made safe first. */
export interface Markdown {
  readonly markdown: string;
}

/**
 * The kinds of reference: `[](limit:holding.longest-dry-wait)`. Rule texts may hold all but `at`, with which annexes say in
 * which section something stands: `[](at:limit:holding.longest-dry-wait)`.
 */
export const referenceSchemes = [
  'limit',
  'every',
  'procedure',
  'decision',
  'form',
  'task',
  'term',
  'role',
  'machine',
  'zone',
  'contact',
  'source',
  'section',
  'at',
] as const;

export type ReferenceScheme = (typeof referenceSchemes)[number];

/** Whether a word names a kind of reference. */
export function isReferenceScheme(word: string): word is ReferenceScheme {
  return referenceSchemes.some((scheme) => scheme === word);
}

/** Whether a value is Markdown rather than text. */
export function isMarkdown(value: unknown): value is Markdown {
  return typeof value === 'object' && value !== null && 'markdown' in value && typeof value.markdown === 'string';
}

/** A reference that is filled in when the tree is built. */
export function refer(scheme: ReferenceScheme, id: string): Markdown {
  return { markdown: `[](${scheme}:${id})` };
}

/** Joins pieces, text made safe and Markdown left as it is. */
export function join(pieces: readonly (string | Markdown)[], separator: string | Markdown = ''): Markdown {
  const between = markdownOf(separator);
  return { markdown: pieces.map(markdownOf).join(between) };
}

/** The Markdown of a piece: text made safe without trimming, so that spaces between pieces survive. */
function markdownOf(piece: string | Markdown): string {
  return typeof piece === 'string' ? escapePunctuation(tidy(piece)) : piece.markdown;
}

/** Where a line breaks inside a table cell. */
export const lineBreak: Markdown = { markdown: '[](break:line)' };

/** One line of text without control characters, private characters or lone surrogates. */
export function tidy(text: string): string {
  return text
    .normalize('NFC')
    .replace(/[\p{Cc}\p{Cf}\p{Zl}\p{Zp}\p{Co}\p{Cs}]+/gu, ' ')
    .replace(/ {2,}/g, ' ');
}

/**
 * Punctuation as character references, so that nothing in it can be read as Markdown. A comma never is, nor a hyphen, a full
 * stop or an apostrophe between letters; they stay, since each reference costs time to read.
 */
export function escapePunctuation(text: string): string {
  return text.replace(/[!-+\--/:-@[-`{-~]/g, (mark, at: number) => (isInWord(text, at) ? mark : `&#${mark.charCodeAt(0)};`));
}

function isInWord(text: string, at: number): boolean {
  return /^[A-Za-z][-.'][A-Za-z]$/.test(text.slice(at - 1, at + 2));
}
