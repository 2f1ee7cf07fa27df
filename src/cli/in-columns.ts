/** Rows of cells as lines with aligned columns. A column is padded up to `widest`; a longer cell goes beyond it. */
export function inColumns(rows: readonly (readonly string[])[], widest = Number.POSITIVE_INFINITY): string[] {
  const widths = (rows[0] ?? []).map((_, index) => Math.min(widest, Math.max(...rows.map((row) => (row[index] ?? '').length))));
  return rows.map((row) =>
    row
      .map((cell, index) => cell.padEnd(widths[index] ?? 0))
      .join('  ')
      .trimEnd(),
  );
}
