import { strFromU8, strToU8, unzipSync, zipSync } from 'fflate';
import { fixFontKeys } from './font-keys.js';

type Parts = Record<string, Uint8Array>;

/**
 * The same document gives the same bytes: the library writes the time, random names of relationships and keys of fonts, and
 * numbers that run on from one document to the next. Here they become the date given, and numbers from one on.
 *
 * @param day as `2026-12-01`
 */
export function normalizeDocx(file: Uint8Array, day: string): Uint8Array {
  const parts = unzipSync(file);
  edit(parts, /^docProps\/core\.xml$/, (text) =>
    text.replace(/(<dcterms:(?:created|modified)\b[^>]*>)[^<]*/g, `$1${day}T00:00:00Z`),
  );
  fixRelationships(parts);
  const words = /^word\/(?:document|footnotes|header\d+|footer\d+)\.xml$/;
  number(parts, words, /(["\s])_Toc(\d+)(?=["\s])/g, '_Toc');
  number(parts, words, /(<w:bookmark(?:Start|End)\b[^>]*\bw:id=")(\d+)(?=")/g);
  number(parts, words, /(<wp:docPr\b[^>]*\bid=")(\d+)(?=")/g);
  edit(parts, /^word\/document\.xml$/, shrinkSectionEnds);
  fixFontKeys(parts);
  // An archive keeps local time: a local date gives the same bytes in every time zone.
  return zipSync(parts, { level: 6, mtime: new Date(1980, 0, 2) });
}

function edit(parts: Parts, name: RegExp, change: (text: string) => string): void {
  for (const [part, bytes] of Object.entries(parts)) if (name.test(part)) parts[part] = strToU8(change(strFromU8(bytes)));
}

/** Random names of relationships become numbers, in each part and in its list of relationships alike. */
function fixRelationships(parts: Parts): void {
  for (const list of Object.keys(parts).filter((part) => part.endsWith('.rels'))) {
    const part = list.replace('_rels/', '').replace(/\.rels$/, '');
    const names = new Map<string, string>();
    const fix = (text: string) => text.replace(/"rId([A-Za-z0-9_-]{21})"/g, (_, name: string) => `"${nameOf(names, name)}"`);
    for (const each of [part, list]) {
      const bytes = parts[each];
      if (bytes !== undefined) parts[each] = strToU8(fix(strFromU8(bytes)));
    }
  }
}

function nameOf(names: Map<string, string>, name: string): string {
  const known = names.get(name) ?? `rIdLink${names.size + 1}`;
  names.set(name, known);
  return known;
}

/** Numbers, in the order in which they are met in all the parts, from one on. */
function number(parts: Parts, part: RegExp, found: RegExp, prefix = ''): void {
  const numbers = new Map<string, number>();
  edit(parts, part, (text) =>
    text.replace(found, (_, before: string, old: string) => {
      if (!numbers.has(old)) numbers.set(old, numbers.size + 1);
      return `${before}${prefix}${numbers.get(old)}`;
    }),
  );
}

/** The empty paragraph that ends a section takes no room, or it would push a full page over its edge. */
function shrinkSectionEnds(text: string): string {
  return text.replace(
    /<w:p><w:pPr>(<w:sectPr\b(?:(?!<\/w:sectPr>).)*<\/w:sectPr>)<\/w:pPr><\/w:p>/gs,
    '<w:p><w:pPr><w:pStyle w:val="Gap"/>$1</w:pPr></w:p>',
  );
}
