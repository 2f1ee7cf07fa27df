import type { Phrase, Rulebook } from '../../link/rulebook.js';
import { join, type Markdown } from './markdown.js';
import { sayNumber } from './say-number.js';

/** What fills the places of a phrase. `count` also picks its form. */
export type PhraseValues<Value> = Readonly<Record<string, Value | number>>;

/**
 * A phrase in the language of the rulebook, with its places filled: `phrase(rulebook, 'print.page-of', { page: 3, pages: 80 })`.
 *
 * @throws RangeError when there is no such phrase, or no value for one of its places.
 */
export function phrase(rulebook: Spoken, id: string, values: PhraseValues<string> = {}): string {
  return partsOf(rulebook, id, values).join('');
}

/** As `phrase`, with pieces of Markdown in its places. */
export function phraseMarkdown(rulebook: Spoken, id: string, values: PhraseValues<string | Markdown>): Markdown {
  return join(partsOf(rulebook, id, values));
}

/** What a phrase is looked up in. */
export type Spoken = Pick<Rulebook, 'phrases' | 'language'>;

function partsOf<Value>({ phrases, language }: Spoken, id: string, values: PhraseValues<Value>): (string | Value)[] {
  const found = phrases[id];
  if (found === undefined) throw new RangeError(`no phrase \`${id}\``);
  return inForm(found, values['count'], language)
    .split(/(\{[a-z-]+\})/)
    .map((piece) => {
      if (!piece.startsWith('{')) return piece;
      const value = values[piece.slice(1, -1)];
      if (value === undefined) throw new RangeError(`no value for \`${piece}\` of the phrase \`${id}\``);
      return typeof value === 'number' ? sayNumber(language, value) : value;
    });
}

/** The form for a number by the plural rules of the language. A form that does not say the number is for exactly one. */
function inForm(found: Phrase, count: unknown, language: string): string {
  if (typeof found === 'string') return found;
  if (typeof count !== 'number') return found.other;
  const form = found[pluralsOf(language).select(count)] ?? found.other;
  return form.includes('{count}') || count === 1 ? form : found.other;
}

const plurals = new Map<string, Intl.PluralRules>();

function pluralsOf(language: string): Intl.PluralRules {
  const rules = plurals.get(language) ?? new Intl.PluralRules(language);
  plurals.set(language, rules);
  return rules;
}
