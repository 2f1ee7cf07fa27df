import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { Ajv2020 } from 'ajv/dist/2020.js';
import standalone from 'ajv/dist/standalone/index.js';
import { digestOfSchemas, schemaOptions } from '../../src/read/validators.js';

const schemaFolder = fileURLToPath(new URL('../../rules/schema/', import.meta.url));
export const validatorsFile = fileURLToPath(new URL('../../src/read/validators.gen.ts', import.meta.url));

/** The JSON Schemas of all kinds of document, and their shared definitions. */
export function readSchemas(): object[] {
  return readdirSync(schemaFolder)
    .sort()
    .map((name) => JSON.parse(readFileSync(`${schemaFolder}${name}`, 'utf8')) as object);
}

/** Makes the validators of all kinds of document from the JSON Schemas, as a module that needs no compiler. */
export function generateValidators(): string {
  const schemas = readSchemas();
  const ajv = new Ajv2020({ ...schemaOptions, code: { source: true, esm: true, lines: true } });
  for (const schema of schemas) ajv.addSchema(schema);
  const kinds = schemas.flatMap((schema) => ('$id' in schema ? String(schema.$id).replace('.json', '') : []));
  const documents = kinds.filter((kind) => kind !== 'defs');
  const named = Object.fromEntries(documents.map((kind) => [`of_${kind}`, `${kind}.json`]));
  const helpers = new Set<string>();
  const code = standalone
    .default(ajv, named)
    .replace(/^"use strict";\s*/, '')
    .replaceAll(/^export const (of_\w+) = (\w+);\s*/gm, 'const $1 = $2;\n')
    .replaceAll(/require\("ajv\/dist\/runtime\/(\w+)"\)\.default/g, (_, helper: string) => {
      helpers.add(helper);
      return helper;
    });
  if (/\brequire\b(?!d)\(/.test(code)) throw new Error('the validators need something else that is required at run time');
  return [
    '// Made from rules/schema by `npm run types`. Do not edit.',
    '// @ts-nocheck',
    "import type { ValidateFunction } from 'ajv/dist/2020.js';",
    `import { ${[...helpers].sort().join(', ')} } from './validator-helpers.js';`,
    '',
    code,
    '/** The SHA-256 of the schemas that this was made from. */',
    `export const madeFrom: string = '${digestOfSchemas(schemas)}';`,
    '',
    'export const validators: Readonly<Record<string, ValidateFunction>> = {',
    ...documents.map((kind) => `  '${kind}': of_${kind},`),
    '};',
    '',
  ].join('\n');
}

if (process.argv[1] === fileURLToPath(import.meta.url)) writeFileSync(validatorsFile, generateValidators());
