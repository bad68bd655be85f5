import fc from 'fast-check';
import { expect, test } from 'vitest';
import { asLengths, asStanding, fitStanding } from '$lib/proof/fitStanding.ts';
import { expectedOf } from '$lib/proof/reading.ts';
import { isKnown, spreadOf } from '$lib/proof/spread.ts';
import { passOf, stood, type Standing } from '$lib/proof/standing.ts';
import type { Taken } from '$lib/proof/taken.ts';
import { runs } from '../runs.ts';
import { gaussian } from './gaussian.ts';
import { blank, off, planned, taken } from './stands.ts';

const all: readonly Taken[] = Object.values(blank);
const it = planned('right');

type Row = readonly number[];
const dot = (a: Row, b: Row): number => a.reduce((sum, one, i) => sum + one * (b[i] ?? 0), 0);
const plus = (a: Row, b: Row, by: number): Row => a.map((one, i) => one + by * (b[i] ?? 0));

/** How numbers of a standing change with each of its six, by differences. */
function slopes(of: (standing: Standing) => Row, at: Standing): readonly Row[] {
  const values = asLengths(at);
  const columns = values.map((_, i) => {
    const there = (by: number) => of(asStanding(values.map((one, j) => (i === j ? one + by : one))));
    return plus(there(0.01), there(-0.01), -1).map((one) => one / 0.02);
  });
  return (columns[0] ?? []).map((_, k) => columns.map((column) => column[k] ?? NaN));
}

/** An orthonormal basis of what rows span, by Gram and Schmidt: what is left of a row below a share of it is none. */
function basisOf(rows: readonly Row[], least: number): readonly Row[] {
  const basis: Row[] = [];
  for (const row of rows) {
    const rest = without(without(row, basis), basis);
    const length = Math.sqrt(dot(rest, rest));
    if (length > least * Math.sqrt(dot(row, row))) basis.push(rest.map((one) => one / length));
  }
  return basis;
}

const without = (row: Row, basis: readonly Row[]): Row => basis.reduce((rest, one) => plus(rest, one, -dot(rest, one)), row); // prettier-ignore

/**
 * How much of what moves the pass is left open by readings: 0 where they determine it, 1 where they tell nothing of the way that it
 * is told least. What tells of a way by less than the least share of itself tells nothing.
 */
function leftOpen(readings: readonly Taken[], at: Standing, least: number): number {
  const read = readings.flatMap((one) => slopes((standing) => expectedOf(one, it.cabinet, stood(it.cabinet, standing), it.around), at)); // prettier-ignore
  const levelTaken = !readings.some(({ what }) => what === 'inboard-height' || what === 'outboard-height');
  const basis = basisOf([...read, ...(levelTaken ? [[0, 0, 0, 0, 0, 1]] : [])], least);
  const pass = slopes((standing) => {
    const { right, over } = passOf(it.cabinet, standing, it.head);
    return [right, over];
  }, at);
  return Math.max(
    ...pass.map((row) => {
      const rest = without(row, basis);
      return Math.sqrt(dot(rest, rest) / dot(row, row));
    }),
  );
}

test('every subset that determines the pass finds it within its spread; every other one says that it is not known', () => {
  const counts = { determined: 0, open: 0 };
  const seen = new Set<string>();
  fc.assert(
    fc.property(fc.subarray([...all], { minLength: 1 }), fc.integer(), (some, seed) => {
      const normal = gaussian(seed);
      const real = off(it.plan, [4 * normal(), 4 * normal(), 2 * normal(), normal(), normal(), 0.2 * normal()]);
      const readings = taken(some, real, it, normal);
      const fitted = fitStanding(readings, it.cabinet, it.plan, it.around);
      if (!fitted) throw new Error('it can be reckoned with');
      const spread = spreadOf(fitted, it.cabinet, it.head);
      // What is told weakly, such as a roll by how far two corners seem apart, counts neither way.
      const open = leftOpen(readings, fitted.standing, 1e-3) > 0.5;
      const determined = leftOpen(readings, fitted.standing, 0.05) < 0.02;
      if (open) counts.open += 1;
      if (open) expect(isKnown(spread)).toBe(false);
      if (determined) counts.determined += 1;
      if (determined) expect(isKnown(spread)).toBe(true);
      if (!isKnown(spread)) return;
      // Also where a little is left open, as of a spot alone: whatever is told holds.
      for (const { what } of some) seen.add(what);
      const [found, truth] = [passOf(it.cabinet, fitted.standing, it.head), passOf(it.cabinet, real, it.head)];
      // Seven standard deviations: once in a hundred thousand million.
      expect(Math.hypot(found.right - truth.right, found.over - truth.over)).toBeLessThan(3 * spread.pass.major);
    }),
    { numRuns: runs(2000) },
  );
  expect(counts.determined).toBeGreaterThan(runs(2000) / 10);
  expect(counts.open).toBeGreaterThan(runs(2000) / 20);
  expect(seen.size).toBe(new Set(all.map(({ what }) => what)).size);
});
