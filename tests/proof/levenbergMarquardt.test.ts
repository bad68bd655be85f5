import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { levenbergMarquardt } from '$lib/proof/levenbergMarquardt.ts';
import { numberFrom } from '../numbers.ts';

/** Statistical Reference Datasets of NIST, nonlinear regression: data and certified values quoted from memory, recomputed. */
const misra1a = {
  x: [77.6, 114.9, 141.1, 190.8, 239.9, 289, 332.8, 378.4, 434.8, 477.3, 536.8, 593.1, 689.1, 760],
  y: [10.07, 14.73, 17.94, 23.93, 29.61, 35.18, 40.02, 44.82, 50.76, 55.05, 61.01, 66.4, 75.47, 81.78],
  starts: [
    [500, 1e-4],
    [250, 5e-4],
  ],
  values: [238.94212918, 5.5015643181e-4],
  errors: [2.7070075241, 7.2668688436e-6],
  rss: 0.12455138894,
};
const boxBod = {
  x: [1, 2, 3, 5, 7, 10],
  y: [109, 149, 149, 191, 213, 224],
  starts: [[100, 0.75]],
  values: [213.80940889, 0.54723748542],
  errors: [12.354515176, 0.10455993237],
  rss: 1168.0088766,
};

describe('the fitter', () => {
  test.each([
    ['Misra1a', misra1a],
    ['BoxBOD', boxBod],
  ])('finds the certified values of %s and their standard errors', (_, { x, y, starts, values, errors, rss }) => {
    for (const start of starts) {
      const fit = levenbergMarquardt(
        ([a = 0, b = 0]) => x.map((one, i) => (y[i] ?? 0) - a * (1 - Math.exp(-b * one))),
        start,
        start.map((one) => one * 1e-5),
      );
      if (!fit) throw new Error('the data determine both');
      const found = fit.residuals.reduce((sum, one) => sum + one * one, 0);
      expect(found / rss).toBeCloseTo(1, 9);
      values.forEach((value, i) => expect((fit.values[i] ?? 0) / value).toBeCloseTo(1, 6));
      errors.forEach((error, i) => {
        const own = Math.sqrt(((fit.covariance[i]?.[i] ?? 0) * found) / (x.length - 2));
        expect(own / error).toBeCloseTo(1, 5);
      });
    }
  });

  test('fits a line as the textbook formulas do', () => {
    fc.assert(
      fc.property(
        fc.array(fc.tuple(numberFrom(-10, 10), numberFrom(-10, 10)), { minLength: 3, maxLength: 20 }),
        (points) => {
          const n = points.length;
          const mean = (of: (p: readonly [number, number]) => number) => points.reduce((s, p) => s + of(p), 0) / n;
          const [mx, my] = [mean(([x]) => x), mean(([, y]) => y)];
          const sxx = points.reduce((s, [x]) => s + (x - mx) ** 2, 0);
          fc.pre(sxx > 1e-2);
          const slope = points.reduce((s, [x, y]) => s + (x - mx) * (y - my), 0) / sxx;
          const fit = levenbergMarquardt(([a = 0, b = 0]) => points.map(([x, y]) => y - a - b * x), [0, 0], [0.1, 0.1]); // prettier-ignore
          expect(fit?.values[1]).toBeCloseTo(slope, 6);
          expect(fit?.values[0]).toBeCloseTo(my - slope * mx, 5);
          expect(fit?.covariance[1]?.[1]).toBeCloseTo(1 / sxx, 5);
        },
      ),
    );
  });

  test('says so of what the residuals do not determine', () => {
    expect(levenbergMarquardt(([a = 0, b = 0]) => [a + b - 1, 2 * (a + b) - 2], [0, 0], [1e-3, 1e-3])).toBeNull();
    expect(levenbergMarquardt(([a = 0]) => [a, NaN], [0], [1e-3])).toBeNull();
  });
});
