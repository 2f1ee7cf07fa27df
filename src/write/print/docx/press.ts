import type { ManualMeta } from '../../model/model-title.js';
import type { Drawing } from './draw-figures.js';

/** A tracked change. */
export type Change = 'inserted' | 'deleted';

/** What stays the same while one document is printed, and what is counted on the way. */
export interface Press {
  meta: ManualMeta;
  /** Names of bookmarks by the anchor they stand at. */
  bookmarks: ReadonlyMap<string, string>;
  /** Numbers of footnotes by their identifier. */
  footnotes: ReadonlyMap<string, number>;
  /** Pictures of figures by the figure's id. */
  drawings: ReadonlyMap<string, Drawing>;
  /** Whether headings number themselves. */
  counted: boolean;
  /** Who made the changes of a redline, and on which day. */
  changedBy: { author: string; date: string };
  /** The next number of a list, of a change. */
  nextList(): number;
  nextChange(): number;
}

/** Where in the document something is printed. */
export interface Place {
  /** Room for words, in twips. */
  width: number;
  /** The block around it, which settles how paragraphs and lists look. */
  inside: 'text' | 'task' | 'opening' | 'answers' | 'columns' | 'caution' | 'note' | 'sheet';
  /** Height of the empty rows of a blank sheet, in twips. */
  rowHeight?: number;
  /** What a change does to the block around it. */
  change?: Change;
}

/** Numbers from one on. */
export function counter(): () => number {
  let last = 0;
  return () => {
    last += 1;
    return last;
  };
}
