import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { arrivalsOf, type Arrival } from '$lib/acoustics/arrivals.ts';
import { screenBetween, type Screen } from '$lib/acoustics/screens.ts';
import { surfacesAround } from '$lib/acoustics/surface.ts';
import { distance, mirrorX, vec3, type Vec3 } from '$lib/geometry/point.ts';
import { sixSided, uprightBox } from '$lib/geometry/solid.ts';
import type { PlacedDriver } from '$lib/layout/pose.ts';
import type { Layout } from '$lib/project/project.ts';
import { firstLayout, project } from '../projects.ts';
import { placed, pointIn } from './placed.ts';
import { inRoom, type PlainRoom } from '../rooms.ts';
import { runs } from '../runs.ts';

const RUNS = { numRuns: runs(500) };
const AXIS = vec3(0, -1, 0);

const roomed = (room: PlainRoom, changes: Record<string, unknown> = {}): Layout =>
  firstLayout(project({ ...inRoom(room), '/layouts/0/monitors': [], ...changes }));
const whole: PlainRoom = { left: 1500, right: 1200, ceiling: 2400 };

const sourceAt = (point: Vec3): PlacedDriver => placed('one', 'tweeter', 100, point);
const listed = (layout: Layout, from: Vec3, head: Vec3, screens: readonly Screen[] = []): Arrival[] =>
  arrivalsOf(
    [{ ...sourceAt(from), distance: distance(from, head) }],
    AXIS,
    surfacesAround(layout),
    { screens, side: 'right' },
    head,
  );

const anywhere = pointIn([-1100, 1100], [-1000, 800], [10, 1600]);

describe('surfaces', () => {
  test('are those the layout names, in order, with their absorption', () => {
    const names = (layout: Layout) => surfacesAround(layout).map(({ name, absorption }) => [name, absorption]);
    expect(names(roomed({}))).toEqual([
      ['desk', 0],
      ['wall:behind', 0],
    ]);
    const absorbs = { desk: 0.1, wall: 0.2, sides: 0.3, ceiling: 0.4 };
    expect(names(firstLayout(project(inRoom({ ...whole, absorbs }))))).toEqual([
      ['desk', 0.1],
      ['wall:behind', 0.2],
      ['wall:left', 0.3],
      ['wall:right', 0.3],
      ['ceiling', 0.4],
      ['monitor', 0],
    ]);
  });

  test('the side walls end at floor and ceiling, a monitor’s face at its edges', () => {
    const surfaces = surfacesAround(firstLayout(project(inRoom(whole))));
    const holds = (name: string, point: Vec3) => surfaces.find((one) => one.name === name)?.holds(point);
    const top = 2400 - 735;
    expect([holds('wall:left', vec3(-1500, 0, top)), holds('wall:left', vec3(-1500, 0, top + 0.1))]).toEqual([
      true,
      false,
    ]);
    expect([holds('wall:right', vec3(1200, 0, -735)), holds('wall:right', vec3(1200, 0, -735.1))]).toEqual([
      true,
      false,
    ]);
    expect([holds('monitor', vec3(307.5, 520, 110)), holds('monitor', vec3(307.6, 520, 110))]).toEqual([true, false]);
    expect([holds('monitor', vec3(0, 520, 475)), holds('monitor', vec3(0, 520, 475.1))]).toEqual([true, false]);
  });
});

test('each way is as long as the straight one from the mirror image, and leaves and arrives by its point', () => {
  fc.assert(
    fc.property(anywhere, anywhere, (from, head) => {
      fc.pre(distance(from, head) > 1);
      const found = listed(roomed(whole), from, head);
      const images = [
        from,
        vec3(from.x, from.y, -from.z),
        vec3(from.x, 2 * (700 + 120) - from.y, from.z),
        vec3(-2 * 1500 - from.x, from.y, from.z),
        vec3(2 * 1200 - from.x, from.y, from.z),
        vec3(from.x, from.y, 2 * (2400 - 735) - from.z),
      ];
      expect(found).toHaveLength(images.length);
      found.forEach(({ length, point, excess }, i) => {
        expect(length).toBeCloseTo(distance(images[i] ?? from, head), 8);
        expect(excess).toBeCloseTo(length - distance(from, head), 8);
        if (point) expect(distance(from, point) + distance(point, head)).toBeCloseTo(length, 8);
      });
    }),
    RUNS,
  );
});

test('source and head may change places', () => {
  fc.assert(
    fc.property(anywhere, anywhere, (from, head) => {
      fc.pre(distance(from, head) > 1);
      const heard = (list: readonly Arrival[]) =>
        list.map(({ length, lands, surface }) => ({ length, lands, surface }));
      const [there, back] = [heard(listed(roomed(whole), from, head)), heard(listed(roomed(whole), head, from))];
      there.forEach((one, i) => {
        expect(back[i]?.length).toBeCloseTo(one.length, 9);
        expect([back[i]?.lands, back[i]?.surface]).toEqual([one.lands, one.surface]);
      });
    }),
    RUNS,
  );
});

test('a mirrored room has mirrored ways', () => {
  const mirrored: PlainRoom = { left: 1200, right: 1500, ceiling: 2400 };
  const swapped = [0, 1, 2, 4, 3, 5];
  fc.assert(
    fc.property(anywhere, anywhere, (from, head) => {
      fc.pre(distance(from, head) > 1);
      const there = listed(roomed(whole), from, head);
      const here = listed(roomed(mirrored), mirrorX(from), mirrorX(head));
      there.forEach(({ length, leaving, point, lands }, i) => {
        const twin = here[swapped[i] ?? NaN];
        expect(twin?.length).toBe(length);
        expect(twin?.leaving).toBeCloseTo(leaving, 12);
        expect(twin?.lands).toBe(lands);
        if (point) expect(distance(twin?.point ?? point, mirrorX(point))).toBeLessThan(1e-9);
      });
    }),
    RUNS,
  );
});

test('a surface keeps its share of the energy', () => {
  const absorbs = { desk: 0.19, wall: 1, sides: 0, ceiling: 0 };
  const [direct, desk, wall, side] = listed(roomed({ ...whole, absorbs }), vec3(300, 300, 200), vec3(0, -300, 400));
  expect([direct?.kept, desk?.kept, wall?.kept, side?.kept]).toEqual([1, Math.sqrt(1 - 0.19), 0, 1]);
});

describe('screens', () => {
  const box: Screen = {
    name: 'monitor',
    monitor: 0,
    body: uprightBox(vec3(-100, 200, 0), vec3(200, 50, 300)),
    width: 200,
  };

  test('are in the way exactly where a walk along the path meets their inside', () => {
    const near = pointIn([-300, 300], [0, 500], [-100, 500]);
    fc.assert(
      fc.property(near, near, (from, to) => {
        const steps = 4000;
        let inside = 0;
        for (let i = 0; i <= steps; i++) {
          const at = (a: number, b: number): number => a + ((b - a) * i) / steps;
          const [x, y, z] = [at(from.x, to.x), at(from.y, to.y), at(from.z, to.z)];
          if (Math.abs(x) < 100 && y > 200 && y < 250 && z > 0 && z < 300) inside++;
        }
        // A walk can step over a corner that the path cuts by less than a step or two.
        if (inside > 2) expect(screenBetween([box], from, to)).toBe(box);
        if (screenBetween([box], from, to) === null) expect(inside).toBe(0);
      }),
      RUNS,
    );
  });

  test('do not count where a path only touches them, and the widest counts of several', () => {
    expect(screenBetween([box], vec3(0, 0, 100), vec3(0, 200, 100))).toBeNull();
    expect(screenBetween([box], vec3(-100, 0, 100), vec3(-100, 400, 100))).toBeNull();
    const wide: Screen = { ...box, name: 'left-cabinet', width: 300 };
    for (const order of [
      [box, wide],
      [wide, box],
    ])
      expect(screenBetween(order, vec3(0, 0, 100), vec3(0, 400, 100))).toBe(wide);
  });

  test('the own cabinet lets out what leaves its baffle but not what comes back through it', () => {
    const from = vec3(0, 300, 200);
    const corners = (y: number): Vec3[] => [vec3(-80, y, 60), vec3(80, y, 60)];
    const [a, b, c, d] = [...corners(300), ...corners(500).reverse()];
    const bottom = [a, b, c, d].flatMap((one) => (one ? [one] : []));
    const body = sixSided([...bottom, ...bottom.map(({ x, y }) => vec3(x, y, 330))]);
    const own: Screen = { name: 'right-cabinet', monitor: null, body, width: 160 };
    const screensOf = (head: Vec3, name: Screen['name']) =>
      listed(roomed({}), from, head, [{ ...own, name }]).map(({ screen }) => screen?.name ?? null);
    // Straight in front: the direct sound and the desk are clear, the wall's comes back through the box.
    expect(screensOf(vec3(0, -400, 200), 'right-cabinet')).toEqual([null, null, 'right-cabinet']);
    // To one side it comes back beside the box; as another's cabinet the box already stops the way out.
    expect(screensOf(vec3(900, -200, 200), 'right-cabinet')).toEqual([null, null, null]);
    expect(screensOf(vec3(900, -200, 200), 'left-cabinet')).toEqual([null, null, 'left-cabinet']);
  });
});
