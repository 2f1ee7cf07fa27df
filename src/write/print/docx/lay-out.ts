import { type FileChild, type ISectionOptions, SectionType } from 'docx';
import type { ManualMeta } from '../../model/model-title.js';
import { type Layout, mm, type Page, pageOf } from './page.js';
import { runningHeads } from './running-heads.js';

/** A piece of the document, and how its page lies. */
export interface Piece {
  layout: Layout;
  columns: 1 | 2;
  newPage: boolean;
  /** Prints it; `newPage` when it has to begin the page itself, because no section does it. */
  print(newPage: boolean): FileChild[];
}

/** Room between two columns, in twips. */
const columnGap = mm(9);

/** Room for words in a column, in twips. */
export function columnWidth({ text: { width } }: Page, columns: 1 | 2): number {
  return columns === 1 ? width : Math.floor((width - columnGap) / 2);
}

/**
 * Pieces as sections of Word: those that lie alike follow each other in one section. Heads and feet are given wherever the
 * page turns, and are taken over from the section before elsewhere; a title page has no head.
 */
export function layOut(pieces: readonly Piece[], meta: ManualMeta, titlePage: boolean): ISectionOptions[] {
  const runs: { piece: Piece; newPage: boolean; children: FileChild[] }[] = [];
  for (const piece of pieces) {
    const last = runs.at(-1);
    const same = last !== undefined && last.piece.layout === piece.layout && last.piece.columns === piece.columns;
    if (same) last.children.push(...piece.print(piece.newPage));
    else {
      const turns = last === undefined || last.piece.layout !== piece.layout;
      runs.push({ piece, newPage: turns || piece.newPage, children: [...piece.print(false)] });
    }
  }
  return runs.map(({ piece: { layout, columns }, newPage, children }, index) => {
    const page = pageOf(meta, layout);
    const turns = runs[index - 1]?.piece.layout !== layout;
    const { header, footer } = runningHeads(meta, page);
    return {
      properties: {
        type: newPage ? SectionType.NEXT_PAGE : SectionType.CONTINUOUS,
        page: { size: page.size, margin: page.margin },
        column: { count: columns, space: columnGap },
        titlePage: titlePage && index === 0,
      },
      ...(turns && {
        headers: { default: header },
        footers: { default: footer, ...(titlePage && index === 0 && { first: footer }) },
      }),
      children,
    };
  });
}
