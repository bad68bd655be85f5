import type { Fault } from '$lib/project/fault.ts';
import type { SweepRow } from './sweepRow.ts';

/** A stretch without an answer. */
export interface Gap {
  /** The first and the last value that has none, to `PRECISION` of a step; an end of the range where it reaches that. */
  readonly from: number;
  readonly to: number;
  /** Why, at its first row. */
  readonly reason: readonly Fault[];
}

type Answers = (at: number) => boolean;

/** How closely the ends of a gap are found, as a part of the distance of two rows. */
const PRECISION = 1e-3;

/** The stretches of rows without an answer, their ends found between the rows. @param answers Whether there is one; null for an input that has no values between. */
export function gapsOf(rows: readonly SweepRow[], answers: Answers | null): Gap[] {
  const gaps: Gap[] = [];
  for (let first = 0; first < rows.length; first++) {
    const row = rows[first];
    if (!row?.reason) continue;
    let last = first;
    while (rows[last + 1]?.ok === false) last += 1;
    const [before, after] = [rows[first - 1], rows[last + 1]];
    const end = rows[last] ?? row;
    gaps.push({
      from: before && answers ? edgeOf(row.at, before.at, answers) : row.at,
      to: after && answers ? edgeOf(end.at, after.at, answers) : end.at,
      reason: row.reason,
    });
    first = last;
  }
  return gaps;
}

/** The furthest place from one without something (an answer) towards one with it that still has none. */
export function edgeOf(without: number, withOne: number, answers: Answers): number {
  let [none, some] = [without, withOne];
  while (Math.abs(some - none) > PRECISION * Math.abs(withOne - without)) {
    const middle = (none + some) / 2;
    if (answers(middle)) some = middle;
    else none = middle;
  }
  return none;
}
