import { createHash } from 'node:crypto';
import { dayNumber } from '../measure/day-number.js';
import { explainSchemaErrors } from './explain-schema-errors.js';
import { type Finding, inOrder, type Place } from './finding.js';
import { didYouMean } from './nearest.js';
import { decode, type ParsedYaml, parseYaml } from './parse-yaml.js';
import { linesOf, type Outline, placesIn } from './places.js';
import { quoted } from './quoted.js';
import type { Document } from './types.gen.js';
import { digestOfSchemas, type Validators, validatorsFor } from './validators.js';

export type Path = readonly (string | number)[];

/** A document that fits its schema, with the place of each of its parts. */
export interface Located<D extends Document = Document> {
  file: string;
  data: D;
  at(path: Path): Place;
  atKey(path: Path): Place;
  /** Where words first stand within the text at a path. */
  atWords(path: Path, words: string): Place;
}

/** One file of a rules or clinic folder. */
export interface SourceFile {
  /** As printed in findings. */
  file: string;
  bytes: Uint8Array;
}

export type Reader = (files: readonly SourceFile[]) => { documents: Located[]; findings: Finding[] };

/** What is kept of a file without findings: all but its name and its text. */
export interface KeptDocument {
  data: Document;
  outline: Outline;
}

/** Keeps documents under a key that changes with the bytes of a file and with the schemas. Nobody may change what it gives. */
export interface DocumentCache {
  get(key: string): KeptDocument | undefined;
  put(key: string, document: KeptDocument): void;
}

/** What reads the documents of a folder. */
interface Reading {
  validators: Validators;
  kinds: readonly string[];
  /** The SHA-256 of the schemas. */
  digest: string;
  cache: DocumentCache | undefined;
}

/**
 * A reader for the kinds of document whose schemas are given: JSON Schema 2020-12, `<kind>.json` and `defs.json`. With a
 * cache, a file that was read before without a finding is taken from there.
 */
export function createReader(schemas: readonly object[], cache?: DocumentCache): Reader {
  const digest = digestOfSchemas(schemas);
  const kinds = schemas.flatMap((schema) =>
    '$id' in schema && schema.$id !== 'defs.json' ? [String(schema.$id).replace('.json', '')] : [],
  );
  const reading: Reading = { validators: validatorsFor(schemas, digest), kinds, digest, cache };
  return (files) => {
    const read = files.map((file) => {
      const { document, findings } = readOrRecall(file, reading);
      return { document, findings: fewOf(findings) };
    });
    return { documents: read.flatMap(({ document }) => document ?? []), findings: read.flatMap(({ findings }) => findings) };
  };
}

function readOrRecall(source: SourceFile, reading: Reading): { document?: Located; findings: Finding[] } {
  const { cache } = reading;
  if (cache === undefined) return readDocument(source, reading);
  const key = createHash('sha256').update(reading.digest).update(source.bytes).digest('hex');
  const kept = cache.get(key);
  if (kept !== undefined) return { document: located(source, kept), findings: [] };
  const { outline, ...read } = readDocument(source, reading);
  if (read.document !== undefined && outline !== undefined) cache.put(key, { data: read.document.data, outline });
  return read;
}

/** A kept document, under the name that its file has now. */
function located({ file, bytes }: SourceFile, { data, outline }: KeptDocument): Located {
  return { file, data, ...placesIn(data, outline, () => linesOf(file, decode(bytes) ?? '')) };
}

function readDocument(
  { file, bytes }: SourceFile,
  { validators, kinds }: Reading,
): { document?: Located; findings: Finding[]; outline?: Outline } {
  const { parsed, findings } = parseYaml(file, bytes);
  if (parsed === undefined) return { findings };
  const { data } = parsed;
  const refuse = (code: Finding['code'], message: string, help: string, place: Place) => ({
    findings: [{ code, message, place, help }],
  });
  const kindsAre = `kinds are ${kinds.join(', ')}`;
  if (!isRecord(data)) return refuse('E201', 'a document is a map that starts with `kind:`', kindsAre, parsed.at([]));
  const { kind } = data;
  if (kind === undefined) return refuse('E201', 'the document does not say its `kind`', kindsAre, parsed.at([]));
  if (typeof kind !== 'string') return refuse('E201', 'the `kind` is no word', kindsAre, parsed.at(['kind']));
  if (!kinds.includes(kind))
    return refuse('E201', `unknown kind ${quoted(kind)}`, didYouMean(kind, kinds) ?? kindsAre, parsed.at(['kind']));
  const validate = validators(kind);
  const wrongDays = daysMissingFromTheCalendar(data, [], parsed);
  if (validate(data) && wrongDays.length === 0) {
    const { at, atKey, atWords, outline } = parsed;
    const document: Located = { file, data: data as unknown as Document, at, atKey, atWords };
    return { document, findings: [], ...(outline !== undefined && { outline }) };
  }
  return { findings: [...explainSchemaErrors(validate.errors ?? [], parsed), ...wrongDays] };
}

/** Texts that are written as a date and name no day, such as `2026-02-30`. */
function daysMissingFromTheCalendar(value: unknown, path: Path, parsed: ParsedYaml): Finding[] {
  if (typeof value === 'string') {
    if (!/^\d{4}-(?:0[1-9]|1[0-2])-(?:0[1-9]|[12]\d|3[01])$/.test(value) || dayNumber(value) !== undefined) return [];
    return [
      {
        code: 'E206',
        message: `\`${value}\` is not a day of the calendar`,
        place: parsed.at(path),
        help: 'the month has fewer days',
      },
    ];
  }
  if (Array.isArray(value)) return value.flatMap((each, index) => daysMissingFromTheCalendar(each, [...path, index], parsed));
  if (!isRecord(value)) return [];
  return Object.entries(value).flatMap(([key, each]) => daysMissingFromTheCalendar(each, [...path, key], parsed));
}

/** Most findings of one file that are shown: a file that is not meant for this tool would fill the screen. */
const mostFindings = 20;

function fewOf(findings: readonly Finding[]): Finding[] {
  const sorted = inOrder(findings);
  const firstLeftOut = sorted[mostFindings];
  if (firstLeftOut === undefined) return sorted;
  const message = `${sorted.length - mostFindings} more findings from here on are not shown`;
  return [
    ...sorted.slice(0, mostFindings),
    { code: 'E112', message, place: firstLeftOut.place, help: 'put the first ones right' },
  ];
}

function isRecord(value: unknown): value is Record<string, unknown> {
  return value !== null && typeof value === 'object' && !Array.isArray(value);
}
