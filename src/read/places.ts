import type { Place } from './finding.js';

type Path = readonly (string | number)[];

/**
 * Where the parts of a document stand, without the document: four numbers for each value, in the order in which
 * `Object.keys` and lists give them, each before what is in it. They are the offset at which the value starts (-1 where a
 * key has none), the one at which it ends, the one at which its key starts (-1 where it has none), and how many values it
 * is with all that is in it.
 */
export type Outline = Int32Array;

/** How many numbers there are for each value, and which is which. */
export const fields = 4;
const [start, end, key, size] = [0, 1, 2, 3];

/** A text and where its offsets stand. */
export interface Lines {
  text: string;
  placeOf(offset: number): Place;
}

/** Tells where the parts of one file stand. */
export interface Places {
  /** Where the value at a path stands, or the nearest part above it that exists. */
  at(path: Path): Place;
  /** Where the key at the end of a path stands. */
  atKey(path: Path): Place;
  /** Where words first stand within the text at a path. */
  atWords(path: Path, words: string): Place;
}

/** The offset at which each line of a text starts. */
export function lineStarts(text: string): number[] {
  const starts = [0];
  for (let next = text.indexOf('\n') + 1; next > 0; next = text.indexOf('\n', next) + 1) starts.push(next);
  return starts;
}

/** The lines of the text of a file. */
export function linesOf(file: string, text: string): Lines {
  const starts = lineStarts(text);
  const placeOf = (offset: number): Place => {
    let [low, high] = [0, starts.length];
    while (low < high) {
      const middle = (low + high) >> 1;
      if ((starts[middle] ?? 0) <= offset) low = middle + 1;
      else high = middle;
    }
    return { file, line: low, column: offset - (starts[low - 1] ?? 0) + 1 };
  };
  return { text, placeOf };
}

/** Looks places up in the outline of a file's data. The lines are asked for once, when the first place is. */
export function placesIn(data: unknown, outline: Outline, read: () => Lines): Places {
  let known: Lines | undefined;
  const lines = (): Lines => {
    known ??= read();
    return known;
  };
  const number = (entry: number, field: number): number => outline[entry * fields + field] ?? -1;
  const step = (entry: number, value: unknown, part: string | number): { entry: number; value: unknown } | undefined => {
    let next = entry + 1;
    if (Array.isArray(value)) {
      const wanted = Number(part);
      if (!(wanted in value)) return undefined;
      for (let index = 0; index < wanted; index += 1) next += number(next, size);
      return { entry: next, value: value[wanted] as unknown };
    }
    if (!isRecord(value) || !Object.hasOwn(value, part)) return undefined;
    const name = String(part);
    for (const each in value) {
      if (each === name) return { entry: next, value: value[name] };
      next += number(next, size);
    }
    return undefined;
  };
  /** The values along a path, as far as there are any. */
  const along = (path: Path): number[] => {
    const entries = [0];
    let here: { entry: number; value: unknown } | undefined = { entry: 0, value: data };
    for (const part of path) {
      here = step(here.entry, here.value, part);
      if (here === undefined) break;
      entries.push(here.entry);
    }
    return entries;
  };
  const offsetOf = (entries: readonly number[]): number => {
    const nearest = entries.findLast((entry) => number(entry, start) >= 0);
    return nearest === undefined ? 0 : number(nearest, start);
  };
  const place = (offset: number): Place => lines().placeOf(offset);
  return {
    at: (path) => place(offsetOf(along(path))),
    atKey: (path) => {
      const entries = along(path);
      const last = entries.length === path.length + 1 ? entries.at(-1) : undefined;
      const offset = last === undefined ? -1 : number(last, key);
      return place(offset >= 0 ? offset : offsetOf(entries));
    },
    atWords: (path, words) => {
      const entries = along(path);
      const last = entries.length === path.length + 1 ? entries.at(-1) : undefined;
      const [from, to] = last === undefined || number(last, start) < 0 ? [0, 0] : [number(last, start), number(last, end)];
      const found = lines().text.indexOf(words, from);
      return place(found >= 0 && found < to ? found : offsetOf(entries));
    },
  };
}

function isRecord(value: unknown): value is Record<string, unknown> {
  return value !== null && typeof value === 'object' && !Array.isArray(value);
}
