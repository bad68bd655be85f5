import type { Finding } from '$lib/solution/findings/finding.ts';
import { merged } from '$lib/solution/findings/whole.ts';
import { edgeOf } from './sweepGaps.ts';

/** A stretch of a sweep over which a check has the same to say. */
export interface FindingStretch {
  /** As it is at its first row. */
  readonly finding: Finding;
  /** The first and the last value that has it, as closely as the ends of a gap; an end of the range where it reaches that. */
  readonly from: number;
  readonly to: number;
}

/** What the checks say at one value of a sweep; empty where there is no answer. */
export interface CheckedRow {
  readonly at: number;
  readonly findings: readonly Finding[];
}

/** What tells findings apart, whatever their numbers are, and whichever loudspeakers have them. */
const kindOf = ({ code, level, subject }: Finding): string => JSON.stringify([code, level, subject]);

/**
 * Where along a sweep each finding begins and ends, in the order in which they begin.
 * @param findingsAt What the checks say between the rows; null for an input that has no values between.
 */
export function* findingStretches(
  rows: readonly CheckedRow[],
  findingsAt: ((at: number) => readonly Finding[]) | null,
): Generator<void, FindingStretch[]> {
  const stretches: FindingStretch[] = [];
  const kinds = rows.map(({ findings }) => new Set(findings.map(kindOf)));
  for (const [first, row] of rows.entries()) {
    for (const finding of merged(row.findings)) {
      const kind = kindOf(finding);
      if (kinds[first - 1]?.has(kind) || stretches.some((one) => one.from === row.at && kindOf(one.finding) === kind)) {
        continue;
      }
      let last = first;
      while (kinds[last + 1]?.has(kind)) last += 1;
      const [before, end, after] = [rows[first - 1], rows[last] ?? row, rows[last + 1]];
      const isGone = (at: number): boolean => !findingsAt?.(at).some((one) => kindOf(one) === kind);
      stretches.push({
        finding,
        from: before && findingsAt ? edgeOf(row.at, before.at, isGone) : row.at,
        to: after && findingsAt ? edgeOf(end.at, after.at, isGone) : end.at,
      });
      yield;
    }
  }
  return stretches;
}
