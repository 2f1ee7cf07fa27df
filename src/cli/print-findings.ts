import { type Finding, inOrder } from '../read/finding.js';
import { colors } from './colors.js';

/** Prints findings, one a block: `file:line:column code message`, then the help line. */
export function printFindings(findings: readonly Finding[], write: (line: string) => void): void {
  for (const { code, message, place, help } of inOrder(findings)) {
    const color = code.startsWith('E') ? colors.red : colors.yellow;
    write(`${place.file}:${place.line}:${place.column} ${color(code)} ${message}`);
    if (help !== undefined) write(`  ${colors.dim('help:')} ${help}`);
  }
}

/** `1 error, 2 warnings`. */
export function countFindings(findings: readonly Finding[]): string {
  const sorted = inOrder(findings);
  const errors = sorted.filter(({ code }) => code.startsWith('E')).length;
  return `${plural(errors, 'error')}, ${plural(sorted.length - errors, 'warning')}`;
}

/** `1 rule`, `2 rules`. */
export function plural(count: number, one: string, many = `${one}s`): string {
  return `${count} ${count === 1 ? one : many}`;
}
