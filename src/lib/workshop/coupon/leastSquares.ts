/** Least squares: what fits best, and how sure that is. */
export interface Fit {
  readonly values: readonly number[];
  /** Sum of the squared residuals. */
  readonly rss: number;
  /** (XᵀX)⁻¹: times the variance of one reading it is the covariance of the values. */
  readonly spread: readonly (readonly number[])[];
}

/** A pivot under this share of its column's square says that the readings cannot tell two unknowns apart. */
const SINGULAR = 1e-9;

/**
 * The values v for which Σ(rowᵢ · v − yᵢ)² is least, by the normal equations and Gauss–Jordan elimination: fit for a handful of
 * unknowns of like size. Null when the rows do not determine them.
 */
export function leastSquares(rows: readonly (readonly number[])[], y: readonly number[]): Fit | null {
  const size = rows[0]?.length ?? 0;
  const sum = (of: (row: readonly number[], i: number) => number): number =>
    rows.reduce((a, row, i) => a + of(row, i), 0);
  const indices = Array.from({ length: size }, (_, i) => i);
  const table = indices.map((a) => [
    ...indices.map((b) => sum((row) => (row[a] ?? 0) * (row[b] ?? 0))),
    ...indices.map((b) => (a === b ? 1 : 0)),
    sum((row, i) => (row[a] ?? 0) * (y[i] ?? 0)),
  ]);
  const squares = table.map((line, i) => line[i] ?? 0);
  for (const pivot of indices) {
    const line = table[pivot] ?? [];
    const head = line[pivot] ?? 0;
    if (!(head > SINGULAR * (squares[pivot] ?? 0)) || head <= 0) return null;
    const scaled = line.map((value) => value / head);
    table[pivot] = scaled;
    for (const other of indices) {
      if (other === pivot) continue;
      const factor = table[other]?.[pivot] ?? 0;
      table[other] = (table[other] ?? []).map((value, i) => value - factor * (scaled[i] ?? 0));
    }
  }
  const values = table.map((line) => line[2 * size] ?? 0);
  const rss = sum((row, i) => (row.reduce((a, x, j) => a + x * (values[j] ?? 0), 0) - (y[i] ?? 0)) ** 2);
  return { values, rss, spread: table.map((line) => line.slice(size, 2 * size)) };
}
