/** A value as a JavaScript literal that nothing can break out of, wherever the module is put: strings only ever go through here. */
export function literal(value: unknown): string {
  return JSON.stringify(value).replace(/[\u2028\u2029<]/g, escapeOf);
}

/** The JSON of a value as one string literal, for data that is parsed only when somebody asks. */
export function jsonText(value: unknown): string {
  const text = JSON.stringify(value)
    .replace(/\\/g, '\\\\')
    .replace(/'/g, "\\'")
    .replace(/[\u2028\u2029<]/g, escapeOf);
  return `'${text}'`;
}

/** A key of an object literal. Computed, `__proto__` is a key like any other. */
export function keyLiteral(key: string): string {
  return key === '__proto__' ? `[${literal(key)}]` : literal(key);
}

function escapeOf(character: string): string {
  return `\\u${character.charCodeAt(0).toString(16).padStart(4, '0')}`;
}

/** A number as a literal; bit sets are 32-bit integers. */
export function numbers(values: Iterable<number>): string {
  return [...values].map(String).join(',');
}
