import { expect, test } from 'vitest';
import { notMeasured } from '$lib/files/buildSheet/notMeasured.ts';
import { sideView } from '$lib/drawing/sideView.ts';
import { topView } from '$lib/drawing/topView.ts';
import { solve } from '$lib/solution/solve.ts';
import { soundOf } from '$lib/solution/sound.ts';
import { firstLayout, project } from '../projects.ts';
import { wallAt } from '../rooms.ts';

/** Desks of every shape with walls at the demo's seat: behind, askew, at both sides and behind the chair. */
const desks = [
  ['bowed', { rule: 'bowed', width: 1400, depth: 700, bow: 90 }],
  ['cut out', { rule: 'bowed', width: 1400, depth: 700, bow: -60 }],
  ['corner', { rule: 'corner', left: 1700, right: 1500, leftDepth: 600, rightDepth: 700, front: 640 }],
  ['L', { rule: 'l', width: 2200, depth: 700, return: { side: 'left', width: 600, length: 800 } }],
  ['drawn', { rule: 'outline', points: [[-700, 0], [0, 0], [700, 0, 0.2], [700, 700], [-700, 700]] }], // prettier-ignore
] as const;
const walls = [
  wallAt('behind', 0, 2200),
  wallAt('askew', 40, 2300),
  wallAt('left', -90, 2100),
  wallAt('behind the chair', 180, 1400),
];

test.each(desks)('a %s desk has a plan, a drawing and a sound, all of it numbers', (_, outline) => {
  const of = project({ '/layouts/0/desk/outline': outline, '/layouts/0/room': { walls } });
  const layout = firstLayout(of);
  const solved = solve(of, layout);
  if (!solved.ok) throw new Error('expected a plan');
  const plan = solved.value;
  expect(plan.checks.map(({ code }) => code)).not.toContain('stand-over-edge');
  const views = [topView(of.speaker, layout, 0, plan), sideView(of.speaker, layout, 0, plan, 'right', 'true')];
  for (const view of views) {
    const numbers = JSON.stringify(view.items, (__, value: unknown) =>
      typeof value === 'number' && !Number.isFinite(value) ? 'no number' : value,
    );
    expect(numbers).not.toContain('no number');
  }
  const { response } = soundOf(of, layout, plan).sides.right;
  expect(response.level.every(Number.isFinite)).toBe(true);
  const surfaces = plan.sides.right.reflections.map(({ surface }) => surface);
  expect(new Set(surfaces)).toEqual(
    new Set(['desk', 'wall:behind', 'wall:askew', 'wall:left', 'wall:behind the chair', 'monitor']),
  );
});

test('a stand over the notch of an L is told, at the edge that it hangs over', () => {
  const of = project({
    '/layouts/0/desk/outline': {
      rule: 'l',
      width: 1700,
      depth: 700,
      return: { side: 'left', width: 600, length: 800 },
    },
    '/layouts/0/room': {},
    // The return ends 550 mm left of the middle: this stand hangs over its inner edge, which faces right.
    '/layouts/0/placement/left': { x: -560, y: -300 },
  });
  const solved = solve(of, firstLayout(of));
  if (!solved.ok) throw new Error('expected a plan');
  const found = solved.value.checks.find(({ code }) => code === 'stand-over-edge');
  expect(found).toMatchObject({ sides: ['left'], level: 'fault', facts: { edge: 'right' } });
});

test('the corners of a desk that nobody has measured are told by a word, not by where the file holds them', () => {
  const of = project({
    '/layouts/0/desk/outline': { rule: 'outline', points: [[-700, 0], [700, 0], [700, 700], [-700, 700]] }, // prettier-ignore
    '/layouts/0/room': {},
    '/layouts/0/entered': [],
  });
  const solved = solve(of, firstLayout(of));
  if (!solved.ok) throw new Error('expected a plan');
  const text = JSON.stringify(notMeasured({ plan: solved.value, sheets: [] }));
  expect(text).toContain('corners');
  expect(text).not.toContain('/layouts/');
});
