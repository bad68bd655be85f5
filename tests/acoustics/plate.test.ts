import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { metBy, rectangularPlate, type Plate } from '$lib/acoustics/plate.ts';
import { distance, vec3, type Vec3 } from '$lib/geometry/point.ts';
import { runs } from '../runs.ts';

const flat = (points: readonly (readonly [number, number])[]): Plate => ({
  corners: points.map(([x, y]) => vec3(x, y, 0)),
  normal: vec3(0, 0, 1),
  convex: false,
});

/** A desk with a return on the right: an inner corner at (200, 300). */
const bent = flat([
  [-800, 0],
  [800, 0],
  [800, 1400],
  [200, 1400],
  [200, 300],
  [-800, 300],
]);

const within = ({ x, y }: Vec3): boolean =>
  (x > -800 && x < 800 && y > 0 && y < 300) || (x > 200 && x < 800 && y > 0 && y < 1400);

const place = fc.double({ min: -1500, max: 2000, noNaN: true });
/** Straight over a point of the plane, equally far over it and under it: the way meets the plane there. */
const over = (x: number, y: number) => [vec3(x, y, 300), vec3(x, y, 500)] as const;

describe('where a plate is met', () => {
  test('by a way to a mirror image over it is the mirror point', () => {
    const desk = rectangularPlate(vec3(-700, 0, 0), vec3(1400, 0, 0), vec3(0, 700, 0));
    const met = metBy(desk, vec3(-400, 300, 200), vec3(0, 100, 400));
    // The third of the way that 200 of 600 mm make.
    expect(distance(met, vec3(-400 + 400 / 3, 300 - 200 / 3, 0))).toBeLessThan(1e-9);
  });

  test('is the point itself within an outline that turns inwards, and the nearest of its rim outside', () => {
    fc.assert(
      fc.property(place, place, (x, y) => {
        const met = metBy(bent, ...over(x, y));
        const at = vec3(x, y, 0);
        if (within(at)) {
          expect(distance(met, at)).toBeLessThan(1e-9);
          return;
        }
        // The rim, a point every millimetre.
        let nearest = Infinity;
        bent.corners.forEach((from, index) => {
          const to = bent.corners[(index + 1) % bent.corners.length] ?? from;
          const steps = Math.round(distance(from, to));
          for (let step = 0; step <= steps; step += 1) {
            const share = step / steps;
            nearest = Math.min(
              nearest,
              Math.hypot(from.x + share * (to.x - from.x) - x, from.y + share * (to.y - from.y) - y),
            );
          }
        });
        expect(distance(met, at)).toBeLessThanOrEqual(nearest + 1e-9);
        expect(distance(met, at)).toBeGreaterThan(nearest - 1);
      }),
      { numRuns: runs(400) },
    );
  });

  test('moves no further than the way does where that passes an inner corner', () => {
    fc.assert(
      fc.property(
        fc.double({ min: -60, max: 60, noNaN: true }),
        fc.double({ min: -60, max: 60, noNaN: true }),
        (dx, dy) => {
          const [x, y] = [200 + dx, 300 + dy];
          const moved = distance(metBy(bent, ...over(x, y)), metBy(bent, ...over(x + 0.01, y)));
          // On the line that halves the inner corner the nearest point changes edges: it is equally far there on both, and near.
          const straddles = dx < -dy !== dx + 0.01 < -dy;
          expect(moved).toBeLessThanOrEqual(straddles ? 2 * Math.hypot(dx, dy) + 1 : 0.02);
        },
      ),
      { numRuns: runs(400) },
    );
  });
});
