// What the validators of `validators.gen.ts` call while they run. They do what `ajv/dist/runtime` does with plain data.

/** How many characters a text has, where a pair of surrogates is one. */
export function ucs2length(text: string): number {
  let length = 0;
  for (const _ of text) length += 1;
  return length;
}

/** Whether two pieces of plain data are the same. */
export function equal(a: unknown, b: unknown): boolean {
  if (a === b) return true;
  if (typeof a !== 'object' || typeof b !== 'object' || a === null || b === null) return Number.isNaN(a) && Number.isNaN(b);
  if (Array.isArray(a) !== Array.isArray(b)) return false;
  const [left, right] = [Object.entries(a), b as Record<string, unknown>];
  return left.length === Object.keys(b).length && left.every(([key, each]) => Object.hasOwn(b, key) && equal(each, right[key]));
}
