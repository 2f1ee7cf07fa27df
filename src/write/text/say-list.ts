import { join, type Markdown } from './markdown.js';

/** `a`, `a or b`, `a, b or c`. */
export function sayList(items: readonly string[], word: 'or' | 'and'): string {
  if (items.length < 2) return items.join('');
  return `${items.slice(0, -1).join(', ')} ${word} ${items.at(-1) ?? ''}`;
}

/** As `sayList`, over pieces of Markdown. */
export function joinList(items: readonly (string | Markdown)[], word: 'or' | 'and'): Markdown {
  const last = items.at(-1);
  if (last === undefined || items.length < 2) return join(items);
  return join([join(items.slice(0, -1), ', '), ` ${word} `, last]);
}

/** With a small first letter, as inside a sentence; a name in capitals or a reference stays as it is. */
export function uncapitalize(text: string): string {
  return /^[A-Z](?:[a-z]| )/.test(text) ? text.charAt(0).toLowerCase() + text.slice(1) : text;
}

/** With a full stop at its end. */
export function endWithStop(text: string): string {
  return /[.!?]$/.test(text) ? text : `${text}.`;
}

/** With a capital first letter. */
export function capitalize(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}
