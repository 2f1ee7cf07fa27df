import type { Place } from '../../read/finding.js';
import { linesOf } from '../../read/places.js';
import { escapePattern } from '../text/escape-pattern.js';
import type { Templates } from '../text/fill-template.js';

/** The texts that a manual was made of. With them, places are exact to the word. */
export interface Origins {
  /** Texts of templates by name, such as `manual/procedure`, as they were filled. */
  templates: Templates;
  /** Text of a file of rules or of the clinic, by the name that places give it. */
  textOf?: ((file: string) => string | undefined) | undefined;
}

export const noOrigins: Origins = { templates: new Map() };

/** Stands in the words of a block for what is not its own: a reference, or what the clinic or a maker says. */
export const elsewhere = '\ufffc';

/** Where words first stand in a file, from a place on; the place itself where they do not, or where the file is not at hand. */
export function placeOfWords({ textOf }: Origins, from: Place, words: string): Place {
  const text = textOf?.(from.file);
  const pattern = patternOf(words);
  if (text === undefined || pattern === undefined) return from;
  const lines = linesOf(from.file, text);
  const start = offsetOf(text, from);
  pattern.lastIndex = start;
  const found = pattern.exec(text);
  return found === null ? from : lines.placeOf(found.index);
}

/** Finds where words stand in templates. */
export function templatesOf({ templates }: Origins): (words: string) => Place | undefined {
  const squeezed = [...templates].map(([name, text]) => ({ name, text, letters: squeeze(text) }));
  return (words) => {
    const letters = squeeze(leadOf(words));
    const pattern = patternOf(words);
    if (pattern === undefined) return undefined;
    for (const each of squeezed) {
      const found = each.letters.includes(letters) ? pattern.exec(each.text) : null;
      if (found !== null) return linesOf(`templates/${each.name}.hbs`, each.text).placeOf(found.index);
      pattern.lastIndex = 0;
    }
    return undefined;
  };
}

/** The words before the first that is filled in. */
export function leadOf(words: string): string {
  return words.split(elsewhere)[0] ?? '';
}

/** Without blanks and Markdown: quick to search. */
export function squeeze(text: string): string {
  return text.replace(/[*_\s]+/g, '');
}

/** Finds words as they may stand in a source: broken over lines, with Markdown around single words. */
function patternOf(words: string): RegExp | undefined {
  const own = leadOf(words).match(/[\p{L}\p{N}%°]+|[^\s\p{L}\p{N}]/gu) ?? [];
  if (own.length === 0) return undefined;
  return new RegExp(own.map((word) => escapePattern(word)).join(String.raw`[*_\s]*`), 'gu');
}

function offsetOf(text: string, { line, column }: Place): number {
  let offset = 0;
  for (let at = 1; at < line; at += 1) {
    const next = text.indexOf('\n', offset);
    if (next < 0) return 0;
    offset = next + 1;
  }
  return offset + column - 1;
}
