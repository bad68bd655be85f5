import type { Measure } from './measure.ts';

/** Values nearer to each other than this part of their size differ by the dust of rounding: mirrored layouts are alike. */
const DUST = 1e-9;

interface Valued {
  readonly name: string;
  readonly ok: boolean;
  readonly values: Readonly<Record<string, number | null>>;
}

/**
 * How good a value is, the less the better, so that values of any measure can be compared: null where nothing is known of it.
 * A missing value that nothing can be better than is −Infinity.
 */
export function badness({ better, missing }: Measure, value: number | null): number | null {
  if (value === null) return missing?.is === 'best' ? -Infinity : null;
  return better === 'less' ? value : -value;
}

/** The names of the best and the worst by one measure; null where fewer than two have a value, or all have the same. */
export function ranked(
  measure: Measure,
  layouts: readonly Valued[],
): { readonly best: readonly string[]; readonly worst: readonly string[] } | null {
  const marks = layouts.flatMap(({ name, ok, values }) => {
    const bad = ok ? badness(measure, values[measure.name] ?? null) : null;
    return bad === null ? [] : [{ name, bad }];
  });
  const [least, most] = [Math.min(...marks.map(({ bad }) => bad)), Math.max(...marks.map(({ bad }) => bad))];
  if (marks.length < 2 || alike(least, most)) return null;
  const at = (end: number) => marks.filter(({ bad }) => alike(bad, end)).map(({ name }) => name);
  return { best: at(least), worst: at(most) };
}

/** A value that nothing can be better than is like itself alone. */
const alike = (a: number, b: number): boolean =>
  a === b || (Number.isFinite(a - b) && Math.abs(a - b) <= DUST * Math.max(1, Math.abs(a), Math.abs(b)));
