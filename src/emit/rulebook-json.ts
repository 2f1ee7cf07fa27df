import { createHash } from 'node:crypto';
import { canonicalJson } from '../decide/canonical-json.js';
import type { Rulebook } from '../link/rulebook.js';

const format = 'clinic-rulebook/1';

/** The evaluator's input: the whole rulebook as JSON with sorted keys, quantities in base units, and its digest. */
export function rulebookToJson(rulebook: Rulebook): string {
  return `${canonicalJson({ format, ...rulebook }, 2)}\n`;
}

/**
 * Reads what `rulebookToJson` wrote.
 *
 * @throws RangeError when the text is something else, or was changed since.
 */
export function rulebookFromJson(text: string): Rulebook {
  const { format: found, digest, ...data }: Record<string, unknown> = JSON.parse(text);
  if (found !== format) throw new RangeError(`expected \`${format}\``);
  if (createHash('sha256').update(canonicalJson(data)).digest('hex') !== digest)
    throw new RangeError('the digest does not fit: the file was changed after it was built');
  const maps = Object.entries(data).map(([key, value]) => [key, mapKeys.has(key) ? new Map(Object.entries(value ?? {})) : value]);
  const rulebook: Rulebook = Object.assign(Object.create(null), Object.fromEntries(maps), { digest });
  return rulebook;
}

const mapKeys: ReadonlySet<string> = new Set([
  'sources',
  'terms',
  'facts',
  'limits',
  'decisions',
  'tasks',
  'procedures',
  'policies',
  'forms',
  'cards',
  'machines',
  'instruments',
  'requirements',
  'notHere',
]);
