import type { Section } from '../../tree/nodes.js';

/** The anchors that Markdown viewers give to headings: lower case, spaces to hyphens, other marks dropped, repeats counted. */
export function slugsOf(sections: readonly Section[]): Map<Section, string> {
  const used = new Map<string, number>();
  return new Map(
    sections.map((section) => {
      const plain = `${section.number} ${section.title}`
        .toLowerCase()
        .replace(/[^\p{L}\p{N}\s_-]/gu, '')
        .replace(/\s/g, '-');
      const before = used.get(plain) ?? 0;
      used.set(plain, before + 1);
      return [section, before === 0 ? plain : `${plain}-${before}`];
    }),
  );
}
