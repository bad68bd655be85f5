import fc from 'fast-check';
import { expect, test } from 'vitest';
import { convexHull } from '$lib/geometry/convexHull.ts';
import { vec3, type Point } from '$lib/geometry/point.ts';
import { sixSided, stretchInside, uprightBox } from '$lib/geometry/solid.ts';
import { radians } from '$lib/geometry/angle.ts';
import type { Monitor } from '$lib/project/project.ts';
import { hiddenShare } from '$lib/layout/hiddenShare.ts';
import { placeSide } from '$lib/layout/place.ts';
import { numberFrom } from '../numbers.ts';
import { firstLayout, project } from '../projects.ts';
import { runs } from '../runs.ts';

const screen: Monitor = {
  x: 0,
  y: 520,
  width: 600,
  height: 360,
  bottom: 110,
  depth: 40,
  turn: 0,
  lean: 0,
  curve: null,
};

/** A point of a face, −½ to ½ of its bend from left to right and 0 to 1 of its height: bent first, then leant back, then turned. */
function onFace({ x, y, width, height, bottom, turn, lean, curve }: Monitor, aside: number, over: number) {
  const end = curve === null ? 0 : Math.asin(width / 2 / curve);
  const right = curve === null ? aside * width : curve * Math.sin(2 * end * aside);
  const ahead = curve === null ? 0 : curve * (1 - Math.cos(2 * end * aside));
  const [t, l] = [radians(turn), radians(lean)];
  const back = over * height * Math.sin(l) - ahead * Math.cos(l);
  const up = over * height * Math.cos(l) + ahead * Math.sin(l);
  return vec3(x + right * Math.cos(t) - back * Math.sin(t), y + right * Math.sin(t) + back * Math.cos(t), bottom + up);
}

test('is the share of the rays from the eye to the screen that a cabinet stops', () => {
  const STEPS = 80;
  let [some, none] = [0, 0];
  fc.assert(
    fc.property(
      numberFrom(180, 420),
      numberFrom(60, 560),
      numberFrom(0, 60),
      numberFrom(-20, 20),
      fc.constantFrom({}, { turn: 18 }, { turn: -25, lean: 10 }, { curve: 900 }, { turn: 12, lean: -6, curve: 1200 }),
      (x, y, toe, tilt, shaped) => {
        const turned = { ...screen, ...shaped };
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
            if (stretchInside(cabinet, eye, onFace(turned, (i + 0.5) / STEPS - 0.5, (j + 0.5) / STEPS)) !== null)
              stopped += 1;
          }
        }
        const share = hiddenShare(cabinet, turned, eye);
        // Strips turn by 15° at most: they stand for an arc within 1 %. A shadow's outline passes through at most some 4 · 80 of the 6400 cells, half of each in doubt, mostly evened out.
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
