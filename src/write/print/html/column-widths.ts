/**
 * The widths of table columns as classes of the style sheet: the page's own security policy lets no element carry a style.
 */
export class ColumnWidths {
  private readonly used = new Map<string, number[]>();

  /** The class for relative widths such as `2 3 5`. */
  classOf(widths: string): string {
    const shares = widths.split(' ').map(Number);
    const name = `w-${shares.join('-')}`.replaceAll('.', '_');
    this.used.set(name, shares);
    return name;
  }

  /** The rules for all that were asked for, in the order of their names. */
  style(): string {
    const names = [...this.used].sort(([a], [b]) => (a < b ? -1 : 1));
    return names.flatMap(([name, shares]) => rulesOf(name, shares)).join('\n');
  }
}

function rulesOf(name: string, shares: readonly number[]): string[] {
  const sum = shares.reduce((a, b) => a + b, 0);
  return shares.map(
    (share, index) => `.${name} > colgroup > col:nth-child(${index + 1}) { width: ${((100 * share) / sum).toFixed(2)}%; }`,
  );
}
