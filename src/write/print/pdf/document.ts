import { filledWord, wordOf } from '../../text/word-of.js';
import type { Writing } from '../../writing.js';
import { aroundPlaces } from './around-places.js';
import type { DocumentData } from './data.js';

/** Sizes of type that cards are tried in, in points; the largest one in which a card fits its page is taken. */
const cardSizes = { large: sizes(24, 12), small: sizes(17, 8.5) } as const;

function sizes(largest: number, smallest: number): number[] {
  return Array.from({ length: (largest - smallest) * 2 + 1 }, (_, step) => largest - step / 2);
}

/** What holds for all pages of a writing. */
export function documentOf({ kind, meta }: Writing, runs: number): DocumentData {
  const size = (kind === 'cards' ? meta.size : undefined) ?? meta.paper;
  const [lang = 'en', region] = meta.language.split('-');
  const [year = 0, month = 1, day = 1] = meta.effectiveOn.split('-').map(Number);
  const [before = '', between = '', after = ''] = aroundPlaces(wordOf(meta, 'print.page-of'));
  return {
    kind,
    paper: size === 'letter' ? 'us-letter' : size,
    title: `${meta.title}, ${meta.clinic}`,
    author: meta.clinic,
    date: [year, month, day],
    lang,
    region: region ?? null,
    head: `${meta.clinic}: ${meta.title}`,
    control: filledWord(meta, 'print.control', { number: meta.number, version: meta.version, date: meta.effective }),
    // Only a manual has a title page that is signed.
    uncontrolled: kind === 'manual' ? wordOf(meta, 'print.uncontrolled') : '',
    words: {
      contents: wordOf(meta, 'print.contents'),
      caution: wordOf(meta, 'print.caution'),
      inserted: wordOf(meta, 'print.inserted'),
      deleted: wordOf(meta, 'print.deleted'),
      moved: wordOf(meta, 'print.moved'),
      'page-of': [before, between, after],
    },
    'type-sizes': size === 'a5' ? cardSizes.small : cardSizes.large,
    runs,
  };
}
