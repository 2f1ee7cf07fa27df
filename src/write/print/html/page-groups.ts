import type { ManualMeta } from '../../model/model-title.js';
import { filledWord, wordOf } from '../../text/word-of.js';
import type { Section } from '../../tree/nodes.js';

/** Chapters that share a run of pages, with the words at the head of those pages. */
export interface PageGroup {
  name: string;
  head: string;
  chapters: Section[];
}

/** Short chapters before the first stage, and short annexes, follow each other without a new page. */
const runs: readonly { name: string; title: string; ids: readonly string[] }[] = [
  { name: 'before', title: 'before-you-start', ids: ['how-to-use', 'scope', 'cautions'] },
  { name: 'behind', title: 'behind', ids: ['changes', 'sources', 'trace', 'glossary'] },
];

/** The chapters in order, each in the group whose pages it is printed on; most have pages of their own. */
export function groupPages(sections: readonly Section[], meta: Pick<ManualMeta, 'words'>): PageGroup[] {
  const groups: PageGroup[] = [];
  for (const chapter of sections.filter(({ depth }) => depth === 1)) {
    const run = runs.find(({ ids }) => ids.some((id) => chapter.id === `section:${id}`));
    const last = groups.at(-1);
    if (run !== undefined && last?.name === run.name) last.chapters.push(chapter);
    else {
      const head = run === undefined ? chapter.title : wordOf(meta, `print.${run.title}`);
      groups.push({ name: run?.name ?? `chapter-${groups.length + 1}`, head, chapters: [chapter] });
    }
  }
  return groups.map((group) => ({ ...group, head: `${numbersOf(group.chapters, meta)}  ${group.head}` }));
}

function numbersOf(chapters: readonly Section[], meta: Pick<ManualMeta, 'words'>): string {
  const [first, last] = [chapters[0]?.number ?? '', chapters.at(-1)?.number ?? ''];
  return first === last ? first : filledWord(meta, 'print.from-to', { first, last });
}
