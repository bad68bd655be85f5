/** What fits best, and how sure that is. */
export interface LeastSquaresFit {
  readonly values: readonly number[];
  /** Residuals at `values`, as the model gave them. */
  readonly residuals: readonly number[];
  /** Their derivatives there: a row a residual, a column a value. */
  readonly slopes: readonly (readonly number[])[];
  /** (JᵀJ)⁻¹: the covariance of the values, where every residual is in units of its own standard deviation. */
  readonly covariance: readonly (readonly number[])[];
}

const FIRST_DAMPING = 1e-3;
const STEPS = 200;
/** A step is the last when it lowers the sum of squares by no more than this share of it. */
const SMALL = 1e-12;
/** Damping past this moves nothing: there is no way down. */
const STUCK = 1e9;

/**
 * The values for which the sum of the squared residuals is least near `start`, by Levenberg's and Marquardt's damped
 * steps: K. Levenberg, Quart. Appl. Math. 2 (1944); D. W. Marquardt, J. SIAM 11 (1963).
 *
 * @param residuals Of any count, smooth in the values.
 * @param steps By how much each value is nudged to find the slopes: small against what bends the residuals.
 * @returns Null when the residuals do not determine the values, or are not finite at `start`.
 */
export function levenbergMarquardt(
  residuals: (values: readonly number[]) => readonly number[],
  start: readonly number[],
  steps: readonly number[],
): LeastSquaresFit | null {
  let values = [...start];
  let off = residuals(values);
  let sum = squares(off);
  let damping = FIRST_DAMPING;
  if (!Number.isFinite(sum)) return null;
  for (let turn = 0; turn < STEPS && damping < STUCK; turn += 1) {
    const slopes = slopesOf(residuals, values, steps);
    const normal = normalOf(slopes);
    const down = values.map((_, i) => -slopes.reduce((total, row, k) => total + at(row, i) * at(off, k), 0));
    let fell = 0;
    while (damping < STUCK) {
      const step = solveSymmetric(damped(normal, damping), down);
      const tried = step && values.map((value, i) => value + at(step, i));
      const there = tried && residuals(tried);
      const next = there ? squares(there) : Infinity;
      if (tried && there && next < sum) {
        fell = sum - next;
        [values, off, sum, damping] = [tried, there, next, damping / 10];
        break;
      }
      damping = Math.max(damping, Number.EPSILON) * 10;
    }
    if (fell <= SMALL * sum) break;
  }
  const slopes = slopesOf(residuals, values, steps);
  const covariance = inverseSymmetric(normalOf(slopes));
  return covariance && { values, residuals: off, slopes, covariance };
}

const at = (list: readonly number[], index: number): number => list[index] ?? 0;
const squares = (list: readonly number[]): number => list.reduce((total, one) => total + one * one, 0);

/** By differences to both sides. */
function slopesOf(
  residuals: (values: readonly number[]) => readonly number[],
  values: readonly number[],
  steps: readonly number[],
): number[][] {
  const columns = values.map((value, i) => {
    const step = at(steps, i);
    const there = (way: 1 | -1) => residuals(values.map((one, j) => (i === j ? value + way * step : one)));
    const [less, more] = [there(-1), there(1)];
    return more.map((one, k) => (one - at(less, k)) / (2 * step));
  });
  return (columns[0] ?? []).map((_, k) => columns.map((column) => at(column, k)));
}

const normalOf = (slopes: readonly (readonly number[])[]): number[][] =>
  (slopes[0] ?? []).map((_, i) =>
    (slopes[0] ?? []).map((__, j) => slopes.reduce((total, row) => total + at(row, i) * at(row, j), 0)),
  );

/** Marquardt's: each value by its own scale. */
const damped = (normal: readonly (readonly number[])[], damping: number): number[][] =>
  normal.map((row, i) => row.map((one, j) => (i === j ? one * (1 + damping) : one)));

/** A column of the inverse for every unit vector; null when the table is not positive definite. */
function inverseSymmetric(table: readonly (readonly number[])[]): number[][] | null {
  const columns = table.map((_, i) => solveSymmetric(table, table.map((__, j) => (i === j ? 1 : 0)))); // prettier-ignore
  return columns.every((column) => column !== null) ? columns : null;
}

/** By Cholesky's triangle, of the table scaled to ones on its diagonal; null when it is not positive definite. */
function solveSymmetric(table: readonly (readonly number[])[], right: readonly number[]): number[] | null {
  const scales = table.map((row, i) => 1 / Math.sqrt(at(row, i)));
  if (!scales.every(Number.isFinite)) return null;
  const size = table.length;
  const lower: number[][] = [];
  for (let i = 0; i < size; i += 1) {
    const row: number[] = [];
    for (let j = 0; j <= i; j += 1) {
      const above = lower[j] ?? row;
      let rest = at(table[i] ?? [], j) * at(scales, i) * at(scales, j);
      for (let k = 0; k < j; k += 1) rest -= at(row, k) * at(above, k);
      if (i === j && !(rest > SINGULAR)) return null;
      row.push(i === j ? Math.sqrt(rest) : rest / at(above, j));
    }
    lower.push(row);
  }
  const half = right.map((one, i) => one * at(scales, i));
  for (let i = 0; i < size; i += 1) {
    for (let k = 0; k < i; k += 1) half[i] = at(half, i) - at(lower[i] ?? [], k) * at(half, k);
    half[i] = at(half, i) / at(lower[i] ?? [], i);
  }
  for (let i = size - 1; i >= 0; i -= 1) {
    for (let k = i + 1; k < size; k += 1) half[i] = at(half, i) - at(lower[k] ?? [], i) * at(half, k);
    half[i] = at(half, i) / at(lower[i] ?? [], i);
  }
  return half.map((one, i) => one * at(scales, i));
}

/** What is left of a one on the diagonal below this is rounding, not information. */
const SINGULAR = 1e-13;
