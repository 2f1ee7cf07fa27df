import { Ajv2020, type ErrorObject, type ValidateFunction } from 'ajv/dist/2020.js';
import { dayNumber } from '../measure/day-number.js';
import { explainSchemaErrors } from './explain-schema-errors.js';
import { type Finding, inOrder, type Place } from './finding.js';
import { didYouMean } from './nearest.js';
import { type ParsedYaml, parseYaml } from './parse-yaml.js';
import { quoted } from './quoted.js';
import type { Document } from './types.gen.js';

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

/** A reader for the kinds of document whose schemas are given: JSON Schema 2020-12, `<kind>.json` and `defs.json`. */
export function createReader(schemas: readonly object[]): Reader {
  const ajv = new Ajv2020({
    allErrors: true,
    discriminator: true,
    strict: true,
    allowUnionTypes: true,
    strictRequired: false,
    verbose: true,
  });
  for (const schema of schemas) ajv.addSchema(schema);
  const kinds = schemas.flatMap((schema) =>
    '$id' in schema && schema.$id !== 'defs.json' ? [String(schema.$id).replace('.json', '')] : [],
  );
  return (files) => {
    const read = files.map((file) => {
      const { document, findings } = readDocument(file, ajv, kinds);
      return { document, findings: fewOf(findings) };
    });
    return { documents: read.flatMap(({ document }) => document ?? []), findings: read.flatMap(({ findings }) => findings) };
  };
}

function readDocument(
  { file, bytes }: SourceFile,
  ajv: Ajv2020,
  kinds: readonly string[],
): { document?: Located; findings: Finding[] } {
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
  const validate = ajv.getSchema<Document>(`${kind}.json`) as ValidateFunction<Document>;
  const wrongDays = daysMissingFromTheCalendar(data, [], parsed);
  if (validate(data) && wrongDays.length === 0) return { document: { ...parsed, data }, findings: [] };
  const errors: ErrorObject[] = validate.errors ?? [];
  return { findings: [...explainSchemaErrors(errors, parsed), ...wrongDays] };
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
