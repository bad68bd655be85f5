import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { dimensionStyle } from '$lib/drawing/dimensionStyle.ts';
import type { Palette, Rgb } from '$lib/drawing/space/colour.ts';
import { cameraOf, FARTHEST, NEAREST, looks } from '$lib/drawing/space/look.ts';
import { partingOf } from '$lib/drawing/space/paintOrder.ts';
import { sceneText } from '$lib/drawing/space/sceneText.ts';
import { spaceScene } from '$lib/drawing/space/spaceScene.ts';
import { stillOf } from '$lib/drawing/space/still.ts';
import { spaceSvg } from '$lib/files/spaceSvg.ts';
import { scene } from '../drawing/scene.ts';
import { numberFrom } from '../numbers.ts';
import { firstLayout, project } from '../projects.ts';
import { plan } from '$lib/solution/plan.ts';
import { runs } from '../runs.ts';

const one = (grey: number): { readonly tint: Rgb; readonly edge: Rgb } => ({
  tint: [grey, 200, 220],
  edge: [grey, 10, 20],
});
const palette: Palette = {
  paper: [250, 251, 248],
  colours: {
    desk: one(1),
    surface: one(13),
    wall: one(2),
    monitor: one(3),
    cabinet: one(4),
    driver: one(5),
    stand: one(6),
    head: one(7),
    axis: { tint: [255, 0, 0], edge: [255, 0, 0] },
    triangle: one(9),
    sight: one(10),
    reflection: one(11),
    other: one(12),
  },
  unshaded: true,
};
const space = spaceScene(scene().plan);
const parting = partingOf(space.faces);
const still = (look: { round: number; over: number; near: number }) =>
  stillOf(space, parting, cameraOf(space, look, 640, 480), palette, dimensionStyle(4));

describe('a still picture', () => {
  test('is drawn with the weights of the drawing, in its colours', () => {
    const { narrow, wide } = dimensionStyle(4);
    const shapes = still(looks.corner.look);
    const axis = shapes.filter(({ colour: [red, green] }) => red === 255 && green === 0);
    expect(axis.length).toBeGreaterThan(0);
    for (const { width } of axis) expect(width).toBeCloseTo(1.4 * narrow, 12);
    const cabinet = shapes.filter(({ kind, colour }) => kind === 'line' && colour[0] === 4);
    expect(cabinet.every(({ width }) => width === wide)).toBe(true);
    const greys = new Set(shapes.flatMap(({ kind, colour }) => (kind === 'area' ? [colour[0]] : [])));
    for (const subject of ['desk', 'monitor', 'cabinet', 'driver', 'stand', 'head'] as const) {
      expect(greys).toContain(palette.colours[subject].tint[0]);
    }
  });

  test('is of finite places, from wherever it is seen, also from within the room', () => {
    fc.assert(
      fc.property(numberFrom(-179, 180), numberFrom(-20, 90), numberFrom(FARTHEST, NEAREST), (round, over, near) => {
        const svg = spaceSvg(still({ round, over, near }), {
          width: 640,
          height: 480,
          title: 'a',
          about: 'b',
          paper: [255, 255, 255],
        });
        expect(svg).not.toMatch(/NaN|Infinity|undefined/);
        expect(svg.match(/<path /g)?.length).toBeGreaterThan(30);
      }),
      { numRuns: runs(60) },
    );
  });

  test('hides a wall from behind', () => {
    const walls = (round: number) =>
      still({ round, over: 10, near: 1 }).some(
        ({ kind, colour: [, green, blue] }) => kind === 'area' && green > 200 && blue > 220,
      );
    expect(walls(0)).toBe(true);
    expect(walls(180)).toBe(false);
  });

  test('says in the file what it is of, with its text safe', () => {
    const svg = spaceSvg([], { width: 10, height: 10, title: 'Desk <A> & B', about: 'seen', paper: [1, 2, 3] });
    expect(svg).toContain('<title>Desk &lt;A&gt; &amp; B</title>');
    expect(svg).toContain('rgb(1 2 3)');
  });
});

test('what there is to be seen is told', () => {
  expect(sceneText(scene().plan)).toBe(
    'the desk, both loudspeakers on their stands with their axes, 1 screen, 1 wall, the head',
  );
  const over = project({
    '/layouts/0/aim/over': { postures: 'all', by: 'worst' },
    '/layouts/0/monitors': [],
    '/layouts/0/room/walls': [],
  });
  const planned = plan(over, firstLayout(over));
  if (!planned.ok) throw new Error('the demo aims at two postures');
  expect(sceneText(planned.value)).toBe(
    'the desk, both loudspeakers on their stands with their axes, the head and 1 other posture',
  );
  expect(spaceScene(planned.value).lines.filter(({ subject }) => subject === 'sight').length).toBeGreaterThan(4);
  expect(spaceScene(planned.value).faces.some(({ subject, faint }) => subject === 'head' && faint)).toBe(true);
});
