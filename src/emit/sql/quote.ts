/** Text as an SQL literal: only a quote has a meaning in it, and is doubled. */
export function literal(text: string): string {
  if (text.includes('\0')) throw new RangeError('SQL text cannot hold the character 0');
  return `'${text.replaceAll("'", "''")}'`;
}

/** A name as a delimited SQL identifier. */
export function identifier(name: string): string {
  if (name.includes('\0')) throw new RangeError('an SQL name cannot hold the character 0');
  return `"${name.replaceAll('"', '""')}"`;
}

/** Text within a comment of one line. */
export function comment(text: string): string {
  return text.replace(/[\p{Cc}\u2028\u2029]+/gu, ' ');
}
