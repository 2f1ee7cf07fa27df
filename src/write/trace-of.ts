import { createHash } from 'node:crypto';
import { citationsOf } from '../check/check-citations.js';
import type { Rulebook } from '../link/rulebook.js';
import { numberSources } from './model/cite.js';
import { findHomes } from './tree/find-homes.js';
import { contentsOf } from './tree/printed-in.js';
import { type SectionText, sectionTexts } from './tree/section-texts.js';
import type { Writing } from './writing.js';

/** Where everything stands, for tools: the traceability annex as data. */
export interface Trace {
  format: 'clinic-rulebook/trace/1';
  /** Number and version of the document. */
  document: { number: string; version: string };
  /** Digest of the rulebook that the pages were written from. */
  rulebook: string;
  /** By `kind:id` such as `limit:holding.longest-dry-wait`, in the order of the alphabet. */
  ids: Record<string, TracedId>;
  /** In the order of the pages. */
  sections: TracedSection[];
  /** By id, in the order of the bibliography. */
  sources: Record<string, TracedSource>;
}

export interface TracedId {
  /** The section where it is at home. */
  home?: string;
  /** All sections that show or name it. */
  sections: string[];
}

export interface TracedSection {
  id: string;
  number: string;
  title: string;
  prints: string[];
  names: string[];
  /** SHA-256 of the printed text in hexadecimal: it changes with any letter. */
  digest: string;
  /** The same without numbers of sections and sources: it stays where only numbers moved. */
  unnumbered: string;
}

export interface TracedSource {
  number: number;
  cited: { kind: string; id: string; at?: string; evidence?: string; checked?: string }[];
  sections: string[];
}

/** Traces a writing: the same pages and rules always give the same trace. */
export function traceOf(writing: Writing, rulebook: Rulebook): Trace {
  const contents = contentsOf(writing);
  const texts = sectionTexts(writing);
  const ids = traceIds(writing);
  return {
    format: 'clinic-rulebook/trace/1',
    document: { number: writing.meta.number, version: writing.meta.version },
    rulebook: rulebook.digest,
    ids,
    sections: contents.map(({ section: { id, number, title }, prints, names }) => {
      const text = texts.get(id);
      return {
        id,
        number,
        title,
        prints: [...prints],
        names: [...names],
        digest: digestOf(text, 'text'),
        unnumbered: digestOf(text, 'unnumbered'),
      };
    }),
    sources: traceSources(rulebook, ids),
  };
}

function traceIds(writing: Writing): Trace['ids'] {
  const homes = findHomes(writing.tree, writing.sections);
  const found = new Map<string, string[]>();
  for (const { section, prints, names } of contentsOf(writing))
    for (const key of [...prints, ...names]) found.set(key, [...(found.get(key) ?? []), section.id]);
  return Object.fromEntries(
    [...found]
      .sort(([a], [b]) => (a < b ? -1 : 1))
      .map(([key, sections]) => {
        const home = homes.get(key)?.section?.id;
        return [key, home === undefined ? { sections } : { home, sections }];
      }),
  );
}

function digestOf(text: SectionText | undefined, reading: 'text' | 'unnumbered'): string {
  const hash = createHash('sha256').update(text?.title ?? '');
  for (const block of text?.blocks ?? []) hash.update('\0').update(block.key).update('\0').update(block[reading]);
  return hash.digest('hex');
}

function traceSources(rulebook: Rulebook, ids: Trace['ids']): Trace['sources'] {
  const cited = citationsOf(rulebook);
  return Object.fromEntries(
    [...numberSources(rulebook)].map(([id, { number }]) => [
      id,
      {
        number,
        cited: cited
          .filter(({ citation }) => citation.id === id)
          .map(({ kind, about, citation: { at, evidence }, checked }) => ({
            kind,
            id: about,
            ...(at !== undefined && { at }),
            ...(evidence !== undefined && { evidence }),
            ...(checked !== undefined && { checked }),
          })),
        sections: ids[`source:${id}`]?.sections ?? [],
      },
    ]),
  );
}
