/** Rows as text with its columns in line: the first to the left, the others to the right. */
export function textTable(rows: readonly (readonly string[])[]): string {
  const widths = rows.reduce<number[]>(
    (most, row) => row.map((cell, column) => Math.max(most[column] ?? 0, cell.length)),
    [],
  );
  const line = (row: readonly string[]): string =>
    row.map((cell, column) => (column === 0 ? cell.padEnd(widths[0] ?? 0) : cell.padStart(widths[column] ?? 0))).join('  '); // prettier-ignore
  return rows.map((row) => `${line(row).trimEnd()}\n`).join('');
}
