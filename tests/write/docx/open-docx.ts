import { strFromU8, unzipSync } from 'fflate';
import { all, type Element, elementsOf, readXml } from './read-xml.js';

/** A Word file, taken apart. */
export interface Opened {
  /** Bytes of all parts by name, as they stand in the archive. */
  parts: Readonly<Record<string, Uint8Array>>;
  /** The XML parts, read. */
  xml: ReadonlyMap<string, Element>;
  document: Element;
}

/** Takes a Word file apart. Every part that is XML must be well formed. */
export function openDocx(bytes: Uint8Array): Opened {
  const parts = unzipSync(bytes);
  const names = Object.keys(parts).filter((name) => /\.(?:xml|rels|svg)$/.test(name));
  const xml = new Map(names.map((name) => [name, readXml(strFromU8(parts[name] ?? new Uint8Array()))]));
  return { parts, xml, document: part(xml, 'word/document.xml') };
}

export function part(xml: ReadonlyMap<string, Element>, name: string): Element {
  const found = xml.get(name);
  if (found === undefined) throw new Error(`no part ${name}`);
  return found;
}

/** The words of a paragraph as they are printed: tabs and breaks as spaces; deleted words too. */
export function textOf(element: Element): string {
  return elementsOf(element)
    .map((each) => {
      if (each.name === 'w:t' || each.name === 'w:delText') return each.children.join('');
      if (each.name === 'w:tab' || each.name === 'w:br') return ' ';
      return each.name === 'w:pPr' || each.name === 'w:instrText' ? '' : textOf(each);
    })
    .join('');
}

/** The paragraphs of a part, in reading order. */
export function paragraphs(element: Element): Element[] {
  return all(element, 'w:p');
}
