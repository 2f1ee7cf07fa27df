import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { compile, type JSONSchema } from 'json-schema-to-typescript';

const schemaFolder = fileURLToPath(new URL('../../rules/schema/', import.meta.url));
export const typesFile = fileURLToPath(new URL('../../src/read/types.gen.ts', import.meta.url));

/** Makes the TypeScript types of all kinds of document from the JSON Schemas. */
export async function generateTypes(): Promise<string> {
  const kinds = readdirSync(schemaFolder)
    .filter((file) => file !== 'defs.json')
    .map((file) => file.replace('.json', ''))
    .sort();
  const definitions = readSchema('defs')['$defs'] as Record<string, object>;
  const root = {
    title: 'Document',
    oneOf: kinds.map((kind) => ({ $ref: `#/$defs/${kind}` })),
    $defs: {
      ...definitions,
      ...Object.fromEntries(kinds.map((kind) => [kind, { ...readSchema(kind), title: `${kind}-document` }])),
    },
  };
  const local = JSON.parse(JSON.stringify(root, forTypes).replaceAll('defs.json#/$defs/', '#/$defs/')) as JSONSchema;
  return compile(local, 'Document', {
    bannerComment: '// Made from rules/schema by `npm run types`. Do not edit.',
    additionalProperties: false,
    unreachableDefinitions: true,
    ignoreMinAndMaxItems: true,
    style: { singleQuote: true, printWidth: 130 },
  });
}

/** Leaves out what types don't need, and the words beside a reference, which would make each reference a type of its own. */
function forTypes(key: string, value: unknown): unknown {
  if (key === '$id' || key === '$schema' || key === 'discriminator') return undefined;
  if (value !== null && typeof value === 'object' && '$ref' in value) return { $ref: value.$ref };
  return value;
}

function readSchema(name: string): Record<string, unknown> {
  return JSON.parse(readFileSync(`${schemaFolder}${name}.json`, 'utf8')) as Record<string, unknown>;
}

if (process.argv[1] === fileURLToPath(import.meta.url)) writeFileSync(typesFile, await generateTypes());
