import { diffWordsWithSpace } from 'diff';

/** A piece of a text: kept, or what a change adds or takes away. */
export interface Piece {
  what: 'kept' | 'inserted' | 'deleted';
  text: string;
}

/** How one text became another, word by word. Where little is kept, the old text stands whole before the new one. */
export function redlineWords(before: string, after: string): Piece[] {
  const pieces = diffWordsWithSpace(before, after).map(
    ({ added, removed, value }): Piece => ({
      what: added ? 'inserted' : removed ? 'deleted' : 'kept',
      text: value,
    }),
  );
  const kept = pieces.filter(({ what }) => what === 'kept').reduce((sum, { text }) => sum + text.trim().length, 0);
  const longest = Math.max(before.length, after.length);
  if (longest === 0 || kept / longest >= leastKept) return pieces;
  return [
    { what: 'deleted' as const, text: before },
    { what: 'inserted' as const, text: after },
  ].filter(({ text }) => text !== '');
}

/** Below this share of kept letters, single kept words only hinder reading. */
const leastKept = 0.3;
