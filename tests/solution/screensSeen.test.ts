import { expect, test } from 'vitest';
import { plan } from '$lib/solution/plan.ts';
import { screensSeen } from '$lib/solution/screensSeen.ts';
import { firstLayout, project } from '../projects.ts';

const AHEAD = { '/layouts/0/listener/setback': 200, '/layouts/0/listener/offset': 0, '/layouts/0/desk/height': 735 };

function seen(monitors: readonly Readonly<Record<string, unknown>>[], earHeight = 1135) {
  const of = project({ ...AHEAD, '/layouts/0/listener/earHeight': earHeight, '/layouts/0/monitors': monitors });
  const planned = plan(of, firstLayout(of));
  if (!planned.ok) throw new Error('no plan');
  return screensSeen(planned.value);
}

test('a screen square to the eyes is seen under twice the arctan of half its width over the distance', () => {
  // Its middle at ear height, 400 mm over the desk, 800 mm before the head.
  const [one] = seen([{ x: 0, y: 600, width: 600, height: 340, bottom: 230 }]);
  expect(one?.distance).toBeCloseTo(800, 9);
  expect(one?.angle).toBeCloseTo((2 * Math.atan(300 / 800) * 180) / Math.PI, 9);
});

test('one bent round the eyes is seen under its width’s share of the circle', () => {
  // Radius 800 mm: both ends are as far from the head as the middle.
  const [one] = seen([{ x: 0, y: 600, width: 800, height: 340, bottom: 230, curve: 800 }]);
  expect(one?.distance).toBeCloseTo(800, 9);
  expect(one?.angle).toBeCloseTo(60, 9);
});

test('a turned one is seen under less, a higher head is farther away', () => {
  const screen = { x: 0, y: 600, width: 600, height: 340, bottom: 230 };
  const [square, turned] = [seen([screen])[0], seen([{ ...screen, turn: 20 }])[0]];
  expect(turned?.angle).toBeLessThan(square?.angle ?? 0);
  expect(seen([screen], 1435)[0]?.distance).toBeCloseTo(Math.hypot(800, 300), 9);
});
