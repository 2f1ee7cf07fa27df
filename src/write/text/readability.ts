import { splitSentences } from './sentences.js';

/** How hard a text is to read, and by which formula. */
export interface Readability {
  formula: 'Flesch-Kincaid' | 'LIX';
  /** Years of school for Flesch-Kincaid; for LIX about 30 is easy and 50 hard. */
  score: number;
  words: number;
  sentences: number;
}

/**
 * Reading level of a text in words and full stops.
 *
 * English: Flesch-Kincaid grade, 0.39 words/sentence + 11.8 syllables/word - 15.59 (Kincaid, Fishburne, Rogers and Chissom,
 * Derivation of new readability formulas for Navy enlisted personnel, Research Branch Report 8-75, 1975). Other languages:
 * LIX, words/sentence + 100 words of more than six letters/words (Björnsson, Läsbarhet, 1968), which counts no syllables.
 * A text without words scores 0.
 */
export function readability(text: string, language: string): Readability {
  const all = splitSentences(text)
    .map(wordsOf)
    .filter((words) => words.length > 0);
  const words = all.flat();
  const formula = language.startsWith('en') ? 'Flesch-Kincaid' : 'LIX';
  const counts = { words: words.length, sentences: all.length };
  if (words.length === 0) return { formula, score: 0, ...counts };
  const perSentence = words.length / all.length;
  if (formula === 'LIX')
    return { formula, score: perSentence + (100 * words.filter((word) => word.length > 6).length) / words.length, ...counts };
  const syllables = words.reduce((sum, word) => sum + countSyllables(word), 0);
  return { formula, score: 0.39 * perSentence + 11.8 * (syllables / words.length) - 15.59, ...counts };
}

/** The words of a text: letters with hyphens or apostrophes inside, or numbers. */
export function wordsOf(text: string): string[] {
  return text.match(/\p{L}[\p{L}'’]*|\d[\d.,]*/gu) ?? [];
}

/**
 * Syllables of an English word by its letters: groups of vowels, without a silent `e` at the end (`take`, `used`, `places` has
 * two, `table` has two). At least one; a number counts as one.
 */
export function countSyllables(word: string): number {
  const spoken = word
    .toLowerCase()
    .replace(/[^a-z]/g, '')
    .replace(/(?<![aeiouy])(?:e|es|ed)$/, (end, at: number, letters: string) => (isSpoken(letters.slice(0, at), end) ? end : ''));
  return Math.max(1, (spoken.match(/[aeiouy]+/g) ?? []).length);
}

/** Whether an `e`, `es` or `ed` at the end makes a syllable behind these letters: `ta-ble`, `pla-ces`, `wan-ted`. */
function isSpoken(before: string, end: string): boolean {
  if (/[^aeiouyl]l$/.test(before)) return true;
  return end === 'es' ? /(?:[sxzcg]|ch|sh)$/.test(before) : end === 'ed' && /[td]$/.test(before);
}
