/** JSON with maps as objects and all keys sorted, without places: equal data gives equal text. */
export function canonicalJson(value: unknown, indent?: number): string {
  return JSON.stringify(plain(value), undefined, indent);
}

function plain(value: unknown): unknown {
  if (value instanceof Map) return plain(Object.fromEntries(value));
  if (Array.isArray(value)) return value.map(plain);
  if (value === null || typeof value !== 'object') return value;
  const entries = Object.entries(value).filter(([key, each]) => key !== 'place' && each !== undefined);
  return Object.fromEntries(entries.sort(([a], [b]) => (a < b ? -1 : 1)).map(([key, each]) => [key, plain(each)]));
}
