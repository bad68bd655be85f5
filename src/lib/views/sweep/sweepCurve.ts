import type { Kink } from '$lib/study/kinks.ts';
import type { Measure } from '$lib/study/measure.ts';
import type { Sweep } from '$lib/study/sweep.ts';
import type { SweepRow } from '$lib/study/sweepRow.ts';

/** A place on a curve: the value of the input, and of the measure. */
export interface Spot {
  readonly at: number;
  readonly value: number;
}

/** A measure along a sweep, as it is drawn. */
export interface SweepCurve {
  /** Stretches without a break: rows, and the bends between them. One of a single place is a dot. */
  readonly runs: readonly (readonly Spot[])[];
  readonly bends: readonly Spot[];
  readonly jumps: readonly { readonly at: number; readonly before: number; readonly after: number }[];
  /** Stretches that have a plan but no value of this: from the first row without to the last, with what that means. */
  readonly missing: readonly { readonly from: number; readonly to: number }[];
  /** The least and the greatest value; null where there is none at all. */
  readonly extent: readonly [number, number] | null;
}

/** Broken wherever there is no value, and at every jump: nothing is drawn where nothing is known. */
export function curveOf(rows: readonly SweepRow[], measure: Measure, kinks: readonly Kink[]): SweepCurve {
  const own = kinks.filter((kink) => kink.measure === measure.name).toSorted((a, b) => a.at - b.at);
  const runs: Spot[][] = [];
  let run: Spot[] = [];
  const end = (): void => {
    if (run.length > 0) runs.push(run);
    run = [];
  };
  let last = -Infinity;
  for (const { at, values } of rows) {
    const value = values[measure.name] ?? null;
    for (const kink of own) {
      if (kink.at <= last || kink.at > at || value === null || run.length === 0) continue;
      run.push({ at: kink.at, value: kink.before });
      if (kink.what === 'bend') continue;
      end();
      run = [{ at: kink.at, value: kink.after }];
    }
    if (value === null) end();
    // A bend or a jump at a row stands for it.
    else if (run.at(-1)?.at !== at) run.push({ at, value });
    last = at;
  }
  end();
  const all = runs.flatMap((one) => one.map(({ value }) => value));
  return {
    runs,
    bends: own.flatMap(({ at, what, before }) => (what === 'bend' ? [{ at, value: before }] : [])),
    jumps: own.flatMap(({ at, what, before, after }) => (what === 'jump' ? [{ at, before, after }] : [])),
    missing: missingOf(rows, measure),
    extent: all.length === 0 ? null : [Math.min(...all), Math.max(...all)],
  };
}

function missingOf(rows: readonly SweepRow[], { name }: Measure): { from: number; to: number }[] {
  const found: { from: number; to: number }[] = [];
  let open = false;
  for (const { at, ok, values } of rows) {
    const isMissing = ok && values[name] === null;
    const current = found.at(-1);
    if (isMissing && open && current) current.to = at;
    else if (isMissing) found.push({ from: at, to: at });
    open = isMissing;
  }
  return found;
}

/** The newer sweep, with the older one's values of what is not worked out yet, where both go over the same places. */
export function heldOver(older: Sweep, newer: Sweep): Sweep {
  const isSame = older.rows.length === newer.rows.length && newer.rows.every(({ at }, i) => at === older.rows[i]?.at);
  if (!isSame) return newer;
  return {
    ...newer,
    rows: newer.rows.map((row, i) => (row.ok ? { ...row, values: { ...older.rows[i]?.values, ...row.values } } : row)),
  };
}

/** What of each unit is worth looking at: somebody hears it, sets it or lifts it. */
const WORTH: Readonly<Record<Measure['unit'], number>> = { '°': 1, mm: 10, µs: 20, dB: 1, kg: 0.1, '%': 2, '': 1 };

/** By how much a measure changes along a sweep, in what is worth looking at; null while it is not worked out. */
export function changeOf(rows: readonly SweepRow[], { name, unit }: Measure): number | null {
  let [least, most, known] = [Infinity, -Infinity, false];
  for (const { ok, values } of rows) {
    const value = values[name];
    if (value === undefined && ok) return null;
    known = true;
    if (value === null || value === undefined) continue;
    least = Math.min(least, value);
    most = Math.max(most, value);
  }
  return known ? Math.max(0, most - least) / WORTH[unit] : null;
}

/** What hardly changes is not drawn unless somebody asks. */
const LEAST = 0.05;

/** Whether a measure changes enough to tell. */
export const isTelling = (rows: readonly SweepRow[], measure: Measure): boolean =>
  (changeOf(rows, measure) ?? 0) >= LEAST;

/**
 * The measures that change most, so many, in the order in which they were given. A move, and what is the input itself, are
 * told by the input; a number of findings by the findings.
 */
export function tellingOf(rows: readonly SweepRow[], by: readonly Measure[], most: number): readonly Measure[] {
  const changes = by
    .filter(
      (measure) =>
        measure.name !== 'move' && measure.unit !== '' && isTelling(rows, measure) && !isInput(rows, measure),
    )
    .map((measure) => ({ measure, change: changeOf(rows, measure) ?? 0 }))
    .sort((a, b) => b.change - a.change)
    .slice(0, most);
  return by.filter((measure) => changes.some((one) => one.measure === measure));
}

const isInput = (rows: readonly SweepRow[], { name }: Measure): boolean =>
  rows.every(({ at, values }) => typeof values[name] !== 'number' || Math.abs(values[name] - at) < 1e-9);

/** What a measure's axis spans at least, so that rounding is not drawn as mountains. */
const LEAST_SPAN: Readonly<Record<Measure['unit'], number>> = { '°': 1, mm: 2, µs: 5, dB: 0.5, kg: 0.1, '%': 1, '': 1 };

/** What an axis spans: all values, and the limit where it lies no further off than that. */
export function spanOf([least, most]: readonly [number, number], { unit, limit }: Measure): readonly [number, number] {
  const [span, middle] = [Math.max(most - least, LEAST_SPAN[unit]), (least + most) / 2];
  const [low, high] = [Math.min(least, middle - span / 2), Math.max(most, middle + span / 2)];
  if (!limit || limit.value < low - span || limit.value > high + span) return [low, high];
  return [Math.min(low, limit.value), Math.max(high, limit.value)];
}

/** The row nearest to a value of the input. */
export function nearestRow(rows: readonly SweepRow[], at: number): number {
  let nearest = 0;
  rows.forEach((row, index) => {
    if (Math.abs(row.at - at) < Math.abs((rows[nearest]?.at ?? Infinity) - at)) nearest = index;
  });
  return nearest;
}
