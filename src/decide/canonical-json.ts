/** JSON with maps as objects and all keys sorted, without places: equal data gives equal text. */
export function canonicalJson(value: unknown, indent?: number): string {
  return JSON.stringify(plain(value), undefined, indent);
}

function plain(value: unknown): unknown {
  if (value === null || typeof value !== 'object') return value;
  if (Array.isArray(value)) return value.map(plain);
  const record = (value instanceof Map ? Object.fromEntries(value) : value) as Record<string, unknown>;
  // Built key by key: this runs over the whole rulebook for every answer.
  const sorted: Record<string, unknown> = Object.create(null);
  for (const key of Object.keys(record).sort()) {
    const each = record[key];
    if (key !== 'place' && each !== undefined) sorted[key] = plain(each);
  }
  return sorted;
}
