import type { BookmarkListNumber, IXmlableObject, PageNumberEstimator } from 'docx';
import type { Section } from '../../tree/nodes.js';

/** The width after which the words of an entry begin, in twips. The library asks for it; the style of the entries has a stop. */
const width = 480;

/**
 * Fills the contents in with the numbers of headings, which Word counts by itself. The library puts a bookmark at each heading of
 * the contents, in order. Their pages stay open: only Word itself can tell them.
 */
export function headingNumbers(sections: readonly Section[]): PageNumberEstimator {
  return Object.assign(() => ({ bookmarks: new Map<string, string>() }), {
    listNumbers(body: IXmlableObject): ReadonlyMap<string, BookmarkListNumber> {
      const names = bookmarksIn(body).filter((name) => name.startsWith('_Toc'));
      if (names.length !== sections.length) return new Map();
      return new Map(
        sections.map(({ number }, index) => [names[index] ?? '', { text: number, separator: 'tab' as const, width }]),
      );
    },
  });
}

/** Names of the bookmarks that begin in a piece of the document, in order. */
function bookmarksIn(piece: unknown): string[] {
  if (Array.isArray(piece)) return piece.flatMap(bookmarksIn);
  if (typeof piece !== 'object' || piece === null) return [];
  return Object.entries(piece).flatMap(([name, inner]) => (name === 'w:bookmarkStart' ? nameOf(inner) : bookmarksIn(inner)));
}

function nameOf(start: unknown): string[] {
  const { _attr: attributes } = start as { _attr?: Record<string, unknown> };
  const name = attributes?.['w:name'];
  return typeof name === 'string' ? [name] : [];
}
