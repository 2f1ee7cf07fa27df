/** A position in a file, from 1. */
export interface Place {
  file: string;
  line: number;
  column: number;
}

/** Something wrong, or worth a look, at a place in the input. */
export interface Finding {
  /** `E` is an error and stops the build; `W` is a warning. Listed in the contributor guide. */
  code: `E${number}` | `W${number}`;
  /** One sentence in lower case, the user's own words in backticks, no full stop. */
  message: string;
  place: Place;
  /** What to do about it. */
  help?: string;
}

/** Whether any finding stops the build. */
export function hasErrors(findings: readonly Finding[]): boolean {
  return findings.some(({ code }) => code.startsWith('E'));
}

/** Sorted by file, line, column and code, each once. */
export function inOrder(findings: readonly Finding[]): Finding[] {
  const sorted = [...findings].sort(
    (a, b) =>
      compareText(a.place.file, b.place.file) ||
      a.place.line - b.place.line ||
      a.place.column - b.place.column ||
      compareText(a.code, b.code) ||
      compareText(a.message, b.message),
  );
  return sorted.filter((each, index) => JSON.stringify(each) !== JSON.stringify(sorted[index - 1]));
}

function compareText(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0;
}
