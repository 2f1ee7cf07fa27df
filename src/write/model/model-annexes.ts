import { canonicalJson } from '../../decide/canonical-json.js';
import type { Rulebook, Source, Term } from '../../link/rulebook.js';
import type { Markdown } from '../text/markdown.js';
import { ruleText, said } from '../text/markdown-safe.js';
import { capitalize } from '../text/say-list.js';
import type { Bibliography } from './cite.js';
import { printedDecisions } from './printed-decisions.js';

/** The numbered bibliography. */
export function modelSources(bibliography: Bibliography) {
  return [...bibliography.values()].map(({ source, number }) => ({
    id: source.id,
    number,
    entry: said(sayEntry(source), source.id),
    note: source.note === undefined ? null : said(source.note, source.id),
  }));
}

function sayEntry({ title, publisher, edition, year, url }: Source): string {
  const parts = [publisher, edition, year === undefined ? undefined : String(year)].filter((part) => part !== undefined);
  return `${title}. ${parts.join(', ')}${parts.length > 0 ? '.' : ''}${url === undefined ? '' : ` ${url.replace(/^https:\/\//, '')}`}`;
}

/** The glossary, by word: the words that the pages of this clinic use. */
export function modelGlossary(rulebook: Rulebook): { id: string; label: string; definition: Markdown }[] {
  const { procedures, tasks, machines, instruments } = rulebook;
  // Filled examples are no pages of the manual.
  const forms = [...rulebook.forms.values()].map(({ sample: _, ...form }) => form);
  const pages = canonicalJson([procedures, tasks, forms, machines, instruments, printedDecisions(rulebook)]).toLowerCase();
  const isUsed = ({ id, label, plural = label }: Term) =>
    [`"${id}"`, `:${id})`, label.toLowerCase(), plural.toLowerCase()].some((word) => pages.includes(word));
  return [...rulebook.terms.values()]
    .filter((term) => term.glossary && isUsed(term))
    .map(({ id, label, definition }) => ({ id, label: capitalize(label), definition: ruleText(definition) }))
    .sort((a, b) => a.label.localeCompare(b.label, rulebook.language));
}
