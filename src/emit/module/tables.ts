import { countCells } from './cells.js';
import type { Laid, Mention } from './lay-out.js';

/** Bits of rows as 32-bit words. */
export class Bits {
  readonly words: Int32Array;

  constructor(words: number, fill = 0) {
    this.words = new Int32Array(words).fill(fill);
  }

  set(row: number): void {
    this.words[row >> 5] = (this.words[row >> 5] ?? 0) | (1 << (row & 31));
  }

  clear(row: number): void {
    this.words[row >> 5] = (this.words[row >> 5] ?? 0) & ~(1 << (row & 31));
  }
}

/** The rows that do not mention a fact: where it is not stated, only these can hold for certain. */
export function unmentioned({ words }: Laid, { rows }: Mention): Int32Array {
  const bits = new Bits(words, -1);
  for (const row of rows) bits.clear(row);
  return bits.words;
}

/**
 * The words of a fact of members or numbers, cell by cell: the rows that a value in this cell does not rule out. In cell 0, not
 * stated, it rules out none: where a fact is missing, rows that mention it are taken from the certain ones.
 */
export function tableOf(laid: Laid, mention: Mention): number[] {
  const count = countCells(mention.fact.cells);
  const cells = Array.from({ length: count }, (_, cell) => {
    const bits = new Bits(laid.words, -1);
    if (cell > 0) for (const row of mention.rows) bits.clear(row);
    return bits;
  });
  for (const [row, allowed] of mention.cells) for (const cell of allowed) cells[cell]?.set(row);
  return cells.flatMap(({ words }) => [...words]);
}

/** The words of an answer by bit set of possible answers: rows that may hold, and rows that hold for certain as far as it goes. */
export function answerTables(laid: Laid, { fact, answers }: Mention): { possible: number[]; certain: number[] } {
  const count = fact.cells.kind === 'answer' ? 1 << fact.cells.possible.length : 1;
  const [possible, certain]: [number[], number[]] = [[], []];
  for (let still = 0; still < count; still += 1) {
    const [may, must] = [new Bits(laid.words, -1), new Bits(laid.words, -1)];
    for (const [row, passing] of answers) {
      if (passing.some((bits) => (bits & still) === 0)) may.clear(row);
      if (passing.some((bits) => (still & ~bits) !== 0)) must.clear(row);
    }
    possible.push(...may.words);
    certain.push(...must.words);
  }
  return { possible, certain };
}

/** Pairs of a word's place and the rows in it. */
export function sparseWords(rows: readonly number[], placeOf: (word: number) => number): number[] {
  const words = new Map<number, number>();
  for (const row of rows) words.set(row >> 5, (words.get(row >> 5) ?? 0) | (1 << (row & 31)));
  return [...words].flatMap(([word, bits]) => [placeOf(word), bits]);
}

/**
 * A table as a stream of small numbers, for decisions with many rows: by row that mentions the fact, how far it lies after the one
 * before, how many runs of cells it does not rule out, and each run as a gap and a length.
 */
export function streamOf({ cells }: Mention): number[] {
  const stream: number[] = [cells.length];
  let before = 0;
  for (const [row, allowed] of cells) {
    const runs: number[] = [];
    let end = 0;
    let open: number | undefined;
    for (const cell of [...allowed].sort((a, b) => a - b)) {
      if (open !== undefined && cell === end) {
        end += 1;
        runs[runs.length - 1] = end - open;
        continue;
      }
      runs.push(cell - end, 1);
      open = cell;
      end = cell + 1;
    }
    stream.push(row - before, runs.length / 2, ...runs);
    before = row;
  }
  return stream;
}

/** Small numbers as text: 6 bits a character, the last of a number without the mark for more (5 bits each). */
export function packed(stream: Iterable<number>): string {
  const characters: string[] = [];
  for (const each of stream) {
    let rest = each;
    while (rest >= 32) {
      characters.push(alphabet[(rest & 31) | 32] ?? '');
      rest >>>= 5;
    }
    characters.push(alphabet[rest] ?? '');
  }
  return characters.join('');
}

/** 64 printable characters in the order of their codes, none of which ends a string: from `0` to `o`, without `<` and `\`. */
const alphabet = Array.from({ length: 66 }, (_, index) => String.fromCharCode(48 + index))
  .filter((character) => character !== '<' && character !== '\\')
  .join('');
