import { phrase, type Spoken } from '../text/phrase.js';

/** `a; b; c`, as the language writes it. */
export function sayRow(rulebook: Spoken, items: readonly string[]): string {
  const [first = '', ...others] = items;
  return others.reduce((row, next) => phrase(rulebook, 'list.semicolon', { first: row, next }), first);
}
