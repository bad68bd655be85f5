import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { frequencies } from '$lib/acoustics/grid.ts';
import { smoothed } from '$lib/acoustics/smooth.ts';
import { onGrid } from '$lib/proof/heard/onGrid.ts';
import { runs } from '../../runs.ts';
import { combPower, measuredAs } from './combs.ts';

/** The desk reflection of a loudspeaker at (−430, 300, 205) heard at (0, −180, 445): delay in seconds, and gain. */
const [DELAY, GAIN] = [0.5612578e-3, 0.8131276];

/** Mean power over a window even in the logarithm of frequency, by Simpson's rule: no closed form, no grid. */
function meanOver(f: number, octaves: number): number {
  const steps = 2000;
  let sum = 0;
  for (let i = 0; i <= steps; i++) {
    const weight = i === 0 || i === steps ? 1 : i % 2 === 1 ? 4 : 2;
    sum += weight * combPower(f * 2 ** (octaves * (i / steps - 0.5)), DELAY, GAIN);
  }
  return 10 * Math.log10(sum / (3 * steps));
}

// Closed form 1 + g² + 2g[Ci(2πf₂τ) − Ci(2πf₁τ)]/ln(f₂/f₁), the integral of a cosine over its logarithm; figures computed with
// a numerical library's cosine integral.
test.each([
  [890.856, 1 / 24, -14.5003],
  [890.856, 1 / 12, -14.3001],
  [890.856, 1 / 6, -13.5811],
  [890.856, 1 / 3, -11.515],
  [1000, 1 / 3, -6.9898],
  [2000, 1 / 6, 4.4601],
  [8000, 1 / 24, -10.8341],
  [8000, 1 / 12, -6.7462],
  [8000, 1, 2.0627],
])('the reference itself: a comb’s mean at %f Hz over %f octaves is its closed form', (f, octaves, level) => {
  expect(meanOver(f, octaves)).toBeCloseTo(level, 3);
});

describe('a measured comb on the grid', () => {
  const kept = onGrid(measuredAs((f) => combPower(f, DELAY, GAIN), 70));
  if (!kept) throw new Error('covers it all');
  const cells = Float64Array.from(kept.levels, (level) => 10 ** (level / 10));

  test.each([1 / 24, 1 / 12, 1 / 6, 1 / 3, 1])('smoothed over %f octaves is the closed form', (octaves) => {
    const means = smoothed(cells, octaves);
    let looked = 0;
    for (let i = 0; i < means.length; i++) {
      const f = frequencies[kept.from + i] ?? 0;
      // A window that leaves the range is another one.
      if (f < 30 * 2 ** octaves || f > 19_000 / 2 ** (octaves / 2)) continue;
      looked += 1;
      // A window that ends inside a cell takes the cell as even; levels are kept to a hundredth.
      expect(Math.abs(10 * Math.log10(means[i] ?? 0) - 70 - meanOver(f, octaves))).toBeLessThan(f < 5000 ? 0.08 : 0.8);
    }
    expect(looked).toBeGreaterThan(330);
  });
});

describe('any measured response on the grid', () => {
  const points = fc
    .uniqueArray(fc.double({ min: 5, max: 30_000, noNaN: true }), { minLength: 2, maxLength: 60 })
    .map((some) => Float64Array.from(some).sort());

  test('lies between its levels, and is none where it covers less than an octave', () => {
    let kept = 0;
    fc.assert(
      fc.property(points, fc.infiniteStream(fc.double({ min: -300, max: 300, noNaN: true })), (at, next) => {
        const levels = at.map(() => next.next().value ?? 0);
        const grid = onGrid({ frequencies: at, levels, phases: null });
        const covered = Math.log2(Math.min(20_000, at.at(-1) ?? 0) / Math.max(20, at[0] ?? 0));
        // The grid's own steps at both ends.
        if (covered > 1.05) expect(grid).not.toBeNull();
        if (covered < 0.99) expect(grid).toBeNull();
        if (!grid) return;
        kept += 1;
        expect(grid.from + grid.levels.length).toBeLessThanOrEqual(479);
        for (const level of grid.levels) {
          expect(level).toBeGreaterThanOrEqual(Math.min(...levels) - 0.01);
          expect(level).toBeLessThanOrEqual(Math.max(...levels) + 0.01);
        }
      }),
      { numRuns: runs(500) },
    );
    expect(kept).toBeGreaterThan(runs(500) / 3);
  });

  test('does not change with points put on the lines between its own', () => {
    fc.assert(
      fc.property(points, fc.infiniteStream(fc.double({ min: -60, max: 60, noNaN: true })), (at, next) => {
        const levels = at.map(() => next.next().value ?? 0);
        const middles = [...at.subarray(1)].map((f, i) => Math.sqrt(f * (at[i] ?? f)));
        const between = [...levels.subarray(1)].map((level, i) => (level + (levels[i] ?? level)) / 2);
        const all = [...at].flatMap((f, i) => [[f, levels[i] ?? 0], ...(i < middles.length ? [[middles[i] ?? 0, between[i] ?? 0]] : [])]); // prettier-ignore
        const [few, many] = [
          onGrid({ frequencies: at, levels, phases: null }),
          onGrid({ frequencies: Float64Array.from(all, ([f = 0]) => f), levels: Float64Array.from(all, ([, level = 0]) => level), phases: null }), // prettier-ignore
        ];
        expect(many?.from).toBe(few?.from);
        // Each is rounded to a hundredth.
        few?.levels.forEach((level, i) => expect(Math.abs(level - (many?.levels[i] ?? NaN))).toBeLessThan(0.0101));
      }),
      { numRuns: runs(300) },
    );
  });

  test('says how coarse it is', () => {
    const thirds = Float64Array.from({ length: 31 }, (_, i) => 20 * 2 ** (i / 3));
    expect(onGrid({ frequencies: thirds, levels: thirds.map(() => 0), phases: null })?.step).toBeCloseTo(1 / 3, 9);
    expect(onGrid(measuredAs(() => 1))?.step).toBeCloseTo(Math.log2(252 / 250), 9);
  });
});
