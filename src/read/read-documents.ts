import { Ajv2020, type ErrorObject, type ValidateFunction } from 'ajv/dist/2020.js';
import { explainSchemaErrors } from './explain-schema-errors.js';
import type { Finding, Place } from './finding.js';
import { didYouMean } from './nearest.js';
import { parseYaml } from './parse-yaml.js';
import type { Document } from './types.gen.js';

export type Path = readonly (string | number)[];

/** A document that fits its schema, with the place of each of its parts. */
export interface Located<D extends Document = Document> {
  file: string;
  data: D;
  at(path: Path): Place;
  atKey(path: Path): Place;
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
    const read = files.map((file) => readDocument(file, ajv, kinds));
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
  if (!isRecord(data))
    return refuse('E201', 'a document is a map that starts with `kind:`', `kinds are ${kinds.join(', ')}`, parsed.at([]));
  if (typeof data['kind'] !== 'string')
    return refuse(
      'E201',
      'the document does not say its `kind`',
      `start it with \`kind:\` and one of ${kinds.join(', ')}`,
      parsed.at([]),
    );
  if (!kinds.includes(data['kind']))
    return refuse(
      'E201',
      `unknown kind \`${data['kind']}\``,
      didYouMean(data['kind'], kinds) ?? `kinds are ${kinds.join(', ')}`,
      parsed.at(['kind']),
    );
  const validate = ajv.getSchema<Document>(`${data['kind']}.json`) as ValidateFunction<Document>;
  if (validate(data)) return { document: { ...parsed, data }, findings: [] };
  const errors: ErrorObject[] = validate.errors ?? [];
  return { findings: explainSchemaErrors(errors, parsed) };
}

function isRecord(value: unknown): value is Record<string, unknown> {
  return value !== null && typeof value === 'object' && !Array.isArray(value);
}
