import type { Citation, Rulebook, Source } from '../../link/rulebook.js';
import { join, type Markdown, refer } from '../text/markdown.js';
import { said } from '../text/markdown-safe.js';
import { phraseMarkdown, type Spoken } from '../text/phrase.js';
import { nameOfSource } from './named-sources.js';

/** The sources that the rulebook cites, numbered in the order of the bibliography. */
export type Bibliography = ReadonlyMap<string, { source: Source; number: number }>;

/** Numbers the sources that are cited anywhere in the rulebook. Practice, makers and the clinic are named, not numbered. */
export function numberSources(rulebook: Rulebook): Bibliography {
  const cited = new Set<string>();
  const { decisions, limits, tasks, procedures, forms, terms, facts, clinic, machines, changes } = rulebook;
  collectCited({ decisions, limits, tasks, procedures, forms, terms, facts, clinic, machines, changes }, cited);
  const published = [...rulebook.sources.values()].filter(({ id, type }) => cited.has(id) && !isNamed(type));
  return new Map(published.map((source, index) => [source.id, { source, number: index + 1 }]));
}

/** `[12]`, or `common practice` where nothing is published; with its clause where `full`. */
export function cite(rulebook: Spoken, bibliography: Bibliography, { id, at, evidence }: Citation, full = false): Markdown {
  const name = bibliography.has(id) ? refer('source', id) : (nameOfSource(rulebook, id) ?? id);
  const source = join([name, ...(full && at !== undefined ? [' ', said(at, id)] : [])]);
  if (evidence === 'recalled' || (full && evidence === 'computed'))
    return phraseMarkdown(rulebook, `cite.${evidence}`, { source });
  return source;
}

/** As `cite`, set in brackets behind a sentence; nothing for common practice. */
export function citeInText(rulebook: Spoken, bibliography: Bibliography, citation: Citation): Markdown | null {
  if (citation.id === 'common-practice') return null;
  const cited = cite(rulebook, bibliography, citation);
  return bibliography.has(citation.id) ? cited : join(['[', cited, ']']);
}

function isNamed(type: string): boolean {
  return type === 'common-practice' || type === 'clinic' || type === 'maker';
}

function collectCited(value: unknown, cited: Set<string>): void {
  if (typeof value === 'string') for (const [, id] of value.matchAll(/\]\(source:([^)]+)\)/g)) cited.add(id ?? '');
  if (typeof value !== 'object' || value === null) return;
  if ('source' in value) addCitation(value.source, cited);
  const inner = value instanceof Map ? value.values() : Object.values(value);
  for (const each of inner) collectCited(each, cited);
}

function addCitation(source: unknown, cited: Set<string>): void {
  if (typeof source === 'string') cited.add(source);
  else if (typeof source === 'object' && source !== null && 'id' in source && typeof source.id === 'string') cited.add(source.id);
}
