/** Ids of the limits that anything inside a value names, in a text or in a condition. */
export function collectLimits(value: unknown, found = new Set<string>()): Set<string> {
  if (typeof value === 'string') for (const [, id] of value.matchAll(/\]\(limit:([^)]+)\)/g)) found.add(id ?? '');
  if (typeof value !== 'object' || value === null) return found;
  if ('limit' in value && typeof value.limit === 'string') found.add(value.limit);
  for (const each of Object.values(value)) collectLimits(each, found);
  return found;
}
