import { untranslatedMark } from '../../link/dictionary.js';
import { join, type Markdown } from './markdown.js';
import { phrase, phraseMarkdown, type Spoken } from './phrase.js';

/** `a`, `a or b`, `a, b or c`, as the language writes it. */
export function sayList(rulebook: Spoken, items: readonly string[], word: 'or' | 'and'): string {
  const last = items.at(-1);
  if (last === undefined || items.length < 2) return items.join('');
  const first = items.slice(0, -1).reduce((list, next) => phrase(rulebook, 'list.comma', { first: list, next }));
  return phrase(rulebook, `list.${word}`, { first, last });
}

/** As `sayList`, over pieces of Markdown. */
export function joinList(rulebook: Spoken, items: readonly (string | Markdown)[], word: 'or' | 'and'): Markdown {
  const last = items.at(-1);
  if (last === undefined || items.length < 2) return joinWith(rulebook, 'list.comma', items);
  return phraseMarkdown(rulebook, `list.${word}`, { first: joinWith(rulebook, 'list.comma', items.slice(0, -1)), last });
}

/** Pieces put together two by two with a phrase of the places `first` and `next`, such as `list.semicolon`. */
export function joinWith(rulebook: Spoken, id: string, items: readonly (string | Markdown)[]): Markdown {
  const [first = '', ...others] = items;
  return others.reduce<Markdown>((list, next) => phraseMarkdown(rulebook, id, { first: list, next }), join([first]));
}

/** With a small first letter, as inside a sentence; a name in capitals or a reference stays as it is. */
export function uncapitalize(text: string): string {
  return /^\p{Lu}(?:\p{Ll}| |’\p{Ll})/u.test(text) ? text.charAt(0).toLowerCase() + text.slice(1) : text;
}

/** With a full stop at its end. */
export function endWithStop(text: string): string {
  return /[.!?]$/.test(text) ? text : `${text}.`;
}

/** With a capital first letter, behind the mark of a text that is not translated. */
export function capitalize(text: string): string {
  const start = text.startsWith(untranslatedMark) ? untranslatedMark.length : 0;
  return text.slice(0, start) + text.charAt(start).toUpperCase() + text.slice(start + 1);
}
