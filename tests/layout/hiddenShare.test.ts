import fc from 'fast-check';
import { expect, test } from 'vitest';
import { convexHull } from '$lib/geometry/convexHull.ts';
import { vec3, type Point } from '$lib/geometry/point.ts';
import { sixSided, stretchInside, uprightBox } from '$lib/geometry/solid.ts';
import { hiddenShare } from '$lib/layout/hiddenShare.ts';
import { placeSide } from '$lib/layout/place.ts';
import { numberFrom } from '../numbers.ts';
import { firstLayout, project } from '../projects.ts';
import { runs } from '../runs.ts';

const screen = { x: 0, y: 520, width: 600, height: 360, bottom: 110, depth: 40 };

test('is the share of the rays from the eye to the screen that a cabinet stops', () => {
  const STEPS = 80;
  let [some, none] = [0, 0];
  fc.assert(
    fc.property(
      numberFrom(180, 420),
      numberFrom(60, 560),
      numberFrom(0, 60),
      numberFrom(-20, 20),
      (x, y, toe, tilt) => {
        const of = project({
          '/layouts/0/monitors': [],
          '/layouts/0/placement/right': { x, y },
          '/layouts/0/aim/toe': { rule: 'as-set', degrees: toe },
          '/layouts/0/aim/tilt': { rule: 'as-set', degrees: tilt },
        });
        const pose = placeSide(of.speaker, firstLayout(of), 'right');
        if (!pose.ok) return;
        const cabinet = sixSided(pose.value.cabinet);
        const eye = vec3(0, -180, 445);
        let stopped = 0;
        for (let i = 0; i < STEPS; i++) {
          for (let j = 0; j < STEPS; j++) {
            const at = vec3(
              screen.x + ((i + 0.5) / STEPS - 0.5) * screen.width,
              screen.y,
              screen.bottom + ((j + 0.5) / STEPS) * screen.height,
            );
            if (stretchInside(cabinet, eye, at) !== null) stopped += 1;
          }
        }
        const share = hiddenShare(cabinet, screen, eye);
        // A shadow's outline passes through at most some 4 · 80 of the 6400 cells, half of each in doubt, mostly evened out.
        expect(Math.abs(share - stopped / STEPS ** 2)).toBeLessThan(0.012);
        if (share > 0.02) some += 1;
        if (share === 0) none += 1;
      },
    ),
    { numRuns: runs(200) },
  );
  expect(some).toBeGreaterThan(runs(200) / 10);
  expect(none).toBeGreaterThan(0);
});

test('of a plate before the eye is what similar triangles give, and nothing behind the screen or the eye', () => {
  const eye = vec3(0, 0, 290);
  const plate = uprightBox(vec3(-15, 260, 275), vec3(30, 1e-6, 30));
  // Half-way to the screen: twice as wide and high there.
  expect(hiddenShare(plate, screen, eye)).toBeCloseTo((60 * 60) / (600 * 360), 6);
  expect(hiddenShare(uprightBox(vec3(-15, 530, 275), vec3(30, 10, 30)), screen, eye)).toBe(0);
  expect(hiddenShare(uprightBox(vec3(-15, -50, 275), vec3(30, 10, 30)), screen, eye)).toBe(0);
  expect(hiddenShare(plate, screen, vec3(0, 600, 290))).toBe(0);
});

test('a hull holds all its points, turns left only, and its corners are among them', () => {
  fc.assert(
    fc.property(fc.array(fc.tuple(numberFrom(-9, 9), numberFrom(-9, 9)), { minLength: 3, maxLength: 12 }), (points) => {
      const hull = convexHull(points);
      hull.forEach((from, i) => {
        const [x, y] = from;
        const [toX, toY]: Point = hull[(i + 1) % hull.length] ?? from;
        expect(points).toContainEqual(from);
        for (const [px, py] of points) expect((toX - x) * (py - y) - (toY - y) * (px - x)).toBeGreaterThan(-1e-9);
      });
    }),
  );
});
