import type { Path } from '../read/read-documents.js';
import type { Document, PhrasesDocument, Words } from '../read/types.gen.js';

/** A text of a document as it is written, or the forms of a counted word, with its place. */
export interface FoundText {
  words: Words;
  path: Path;
}

/** What a document prints. Under these keys stand texts; everywhere else stand ids, values and titles of sources. */
const textKeys: ReadonlySet<string> = new Set([
  ...['label', 'plural', 'definition', 'question', 'help', 'title', 'purpose', 'about', 'register', 'say'],
  ...['because', 'caution', 'cautions', 'do', 'why', 'if-not', 'pass', 'when', 'on', 'steps', 'ready', 'done'],
  ...['covers', 'signed-when', 'note', 'reason', 'on-card', 'sample'],
]);
/** Keys under which a map holds texts, whatever its own keys are. */
const deepKeys: ReadonlySet<string> = new Set(['say', 'sample']);
const leftAlone: ReadonlySet<string> = new Set(['source', 'examples', 'given']);
/** Documents that print nothing of their own. */
const silent: ReadonlySet<string> = new Set(['fixture', 'translation', 'wording']);

/** A copy of a document with other texts; ids, values, examples and titles of sources stay as they are. */
export function mapTexts(data: Document, change: (words: Words, path: Path) => Words): Document {
  if (silent.has(data.kind)) return data;
  if (data.kind === 'phrases') return mapPhrases(data, change);
  return mapWithin(data, '', [], change, textKeysOf(data)) as Document;
}

function mapPhrases(data: PhrasesDocument, change: (words: Words, path: Path) => Words): Document {
  const mapAll = (key: 'phrases' | 'counted') =>
    data[key] && { [key]: Object.fromEntries(Object.entries(data[key]).map(([id, words]) => [id, change(words, [key, id])])) };
  return { ...data, ...mapAll('phrases'), ...mapAll('counted') } as PhrasesDocument;
}

/** The texts of a document in order. */
export function textsOf(data: Document): FoundText[] {
  const found: FoundText[] = [];
  mapTexts(data, (words, path) => {
    found.push({ words, path });
    return words;
  });
  return found;
}

function textKeysOf({ kind }: Document): ReadonlySet<string> {
  if (kind === 'sources') return new Set(['note']);
  if (kind === 'form') return new Set([...textKeys, 'unit']);
  return textKeys;
}

function mapWithin(
  value: unknown,
  key: string,
  path: Path,
  change: (words: Words, path: Path) => Words,
  keys: ReadonlySet<string>,
): unknown {
  // What has no letters, such as the number in a filled sheet, is the same in every language.
  if (typeof value === 'string') return keys.has(key) && /\p{L}/u.test(value) ? change(value, path) : value;
  if (Array.isArray(value)) return value.map((each, index) => mapWithin(each, key, [...path, index], change, keys));
  if (typeof value !== 'object' || value === null) return value;
  return Object.fromEntries(
    Object.entries(value).map(([name, each]) => [
      name,
      leftAlone.has(name) ? each : mapWithin(each, deepKeys.has(key) ? key : name, [...path, name], change, keys),
    ]),
  );
}
