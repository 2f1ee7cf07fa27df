import { createHash } from 'node:crypto';
import { createRequire } from 'node:module';
import type { Options, ValidateFunction } from 'ajv/dist/2020.js';
import { madeFrom, validators } from './validators.gen.js';

/** How schemas are compiled, ahead of time and at run time: every error is kept, with the part of the schema that it breaks. */
export const schemaOptions: Options = {
  allErrors: true,
  discriminator: true,
  strict: true,
  allowUnionTypes: true,
  strictRequired: false,
  verbose: true,
};

/** Gives the validator of a kind of document. */
export type Validators = (kind: string) => ValidateFunction;

/** The SHA-256 of schemas, in whatever order they come. */
export function digestOfSchemas(schemas: readonly object[]): string {
  const id = (schema: object) => ('$id' in schema ? String(schema.$id) : '');
  const sorted = [...schemas].sort((a, b) => (id(a) < id(b) ? -1 : 1));
  return createHash('sha256').update(JSON.stringify(sorted)).digest('hex');
}

/** The validators that `npm run types` made where the schemas are still the same; otherwise they are compiled now. */
export function validatorsFor(schemas: readonly object[], digest = digestOfSchemas(schemas)): Validators {
  if (digest !== madeFrom) return compileSchemas(schemas);
  return (kind) => validators[kind] as ValidateFunction;
}

/** Validators compiled at run time, each when it is first asked for. */
export function compileSchemas(schemas: readonly object[]): Validators {
  // The compiler is large: it is loaded only where it is needed.
  const { Ajv2020 } = createRequire(import.meta.url)('ajv/dist/2020.js') as typeof import('ajv/dist/2020.js');
  const ajv = new Ajv2020(schemaOptions);
  for (const schema of schemas) ajv.addSchema(schema);
  return (kind) => ajv.getSchema(`${kind}.json`) as ValidateFunction;
}
