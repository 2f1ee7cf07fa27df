import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { expect, it } from 'vitest';

const schemas = fileURLToPath(new URL('../../rules/schema/', import.meta.url));
const explained = readFileSync(new URL('../../src/read/explain-schema-errors.ts', import.meta.url), 'utf8');

/** Keywords that only describe, or only lead to others. */
const silent = ['$schema', '$id', '$ref', '$defs', 'title', 'description', 'properties', 'items', 'oneOf', 'propertyName'];

it('every keyword that the schemas use has words of its own when it is broken', () => {
  const used = new Set<string>();
  for (const name of readdirSync(schemas)) collect(JSON.parse(readFileSync(schemas + name, 'utf8')), used);
  const worded = [...explained.matchAll(/case '(\w+)':/g)].map(([, keyword]) => keyword);
  expect([...used].filter((keyword) => !silent.includes(keyword) && !worded.includes(keyword))).toEqual([]);
  expect(used.size).toBeGreaterThan(15);
});

it('every pattern that the schemas use is described, in the schema or in words of its own', () => {
  const mute: string[] = [];
  const look = (schema: unknown): void => {
    if (typeof schema !== 'object' || schema === null) return;
    if (
      'pattern' in schema &&
      typeof schema.pattern === 'string' &&
      !('description' in schema) &&
      !explained.includes(`'${schema.pattern}'`)
    )
      mute.push(schema.pattern);
    Object.values(schema).forEach(look);
  };
  for (const name of readdirSync(schemas)) look(JSON.parse(readFileSync(schemas + name, 'utf8')));
  expect(mute).toEqual([]);
});

function collect(schema: unknown, used: Set<string>): void {
  if (Array.isArray(schema)) for (const each of schema) collect(each, used);
  else if (typeof schema === 'object' && schema !== null)
    for (const [key, each] of Object.entries(schema)) {
      used.add(key);
      if (key === 'properties' || key === '$defs') for (const inner of Object.values(each as object)) collect(inner, used);
      else collect(each, used);
    }
}
