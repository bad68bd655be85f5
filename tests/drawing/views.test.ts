import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Point, Vec3 } from '$lib/geometry/point.ts';
import { fromAbove, fromRight, type Projection } from '$lib/drawing/projection.ts';
import { convexHull } from '$lib/drawing/hull.ts';
import { floorLevel, type Floor } from '$lib/drawing/roomFromSide.ts';
import { sideView } from '$lib/drawing/sideView.ts';
import { standSolid } from '$lib/drawing/standItems.ts';
import { topView } from '$lib/drawing/topView.ts';
import type { Item, Outline, View } from '$lib/drawing/view.ts';
import { sideNames, type SideName } from '$lib/project/project.ts';
import { scenes } from './arbitraries.ts';
import { scene, type Scene } from './scene.ts';
import { runs } from '../runs.ts';

const top = ({ project, layout, plan }: Scene): View => topView(project.speaker, layout, 0, plan);
const side = ({ project, layout, plan }: Scene, name: SideName, floor: Floor = 'true'): View =>
  sideView(project.speaker, layout, 0, plan, name, floor);
const everyView = (made: Scene): View[] => [
  top(made),
  ...sideNames.flatMap((name) => [side(made, name), side(made, name, 'broken')]),
];

function outlineOf(view: View, id: string): Outline {
  const item = view.items.find((one) => one.id === id);
  if (item?.kind !== 'outline') throw new Error(`no outline ${id}`);
  return item;
}

/** Least distance of a point to the left of a counter-clockwise outline's edges, mm: negative outside it. */
function depthIn(points: readonly Point[], [x, y]: Point): number {
  return Math.min(
    ...points.map(([ax, ay], index) => {
      const [bx, by] = points[(index + 1) % points.length] ?? [ax, ay];
      const size = Math.hypot(bx - ax, by - ay);
      return size === 0 ? Infinity : ((bx - ax) * (y - ay) - (by - ay) * (x - ax)) / size;
    }),
  );
}

/** Every number anywhere in a value. */
function numbersIn(value: unknown): number[] {
  if (typeof value === 'number') return [value];
  return value !== null && typeof value === 'object' ? Object.values(value).flatMap(numbersIn) : [];
}

/** The value at a JSON pointer; undefined where it leads nowhere. */
const resolve = (document: unknown, pointer: string): unknown =>
  pointer
    .split('/')
    .slice(1)
    .reduce<unknown>(
      (value, step) =>
        value !== null && typeof value === 'object'
          ? Object.entries(value).find(([key]) => key === step)?.[1]
          : undefined,
      document,
    );

/** Float dust of coordinates up to some metres. mm. */
const DUST = 1e-9;

describe('views', () => {
  it('are made of finite numbers and unique ids, whatever the arrangement', () => {
    fc.assert(
      fc.property(scenes, (made) => {
        for (const view of everyView(made)) {
          const ids = view.items.map(({ id }) => id);
          expect(new Set(ids).size).toBe(ids.length);
          expect(numbersIn(view).every(Number.isFinite)).toBe(true);
        }
      }),
      { numRuns: runs(60) },
    );
  });

  it('show the cabinet’s eight corners inside its outline, and on it nothing else than corners', () => {
    fc.assert(
      fc.property(scenes, fc.constantFrom(...sideNames), (made, name) => {
        const cases: [View, Projection][] = [
          [top(made), fromAbove],
          [side(made, name), fromRight],
        ];
        for (const [view, { flat }] of cases) {
          const corners = made.plan.sides[name].cabinet.map(flat);
          const { points } = outlineOf(view, `cabinet-${name}`);
          for (const corner of corners) expect(depthIn(points, corner)).toBeGreaterThan(-DUST);
          for (const point of points) expect(corners).toContainEqual(point);
        }
      }),
      { numRuns: runs(60) },
    );
  });

  it('keep every driver within the cabinet’s outline', () => {
    fc.assert(
      fc.property(scenes, fc.constantFrom(...sideNames), (made, name) => {
        for (const view of [top(made), side(made, name)]) {
          const cabinet = outlineOf(view, `cabinet-${name}`).points;
          for (const index of [0, 1]) {
            for (const point of outlineOf(view, `driver-${name}-${index}`).points) {
              expect(depthIn(cabinet, point)).toBeGreaterThan(-DUST);
            }
          }
        }
      }),
      { numRuns: runs(40) },
    );
  });

  it('draw the top of a wedge where the cabinet’s bottom is, toed or not', () => {
    fc.assert(
      fc.property(scenes, fc.constantFrom(...sideNames), ({ plan }, name) => {
        const placed = plan.sides[name];
        const ends = standSolid(name, placed, plan.stand[name]).corners;
        const { lift, frontEdgeHeight, rearEdgeHeight } = placed;
        const heights = ends.map(({ z }) => z);
        expect(Math.max(...heights)).toBeCloseTo(Math.max(frontEdgeHeight, rearEdgeHeight), 6);
        const [front] = placed.cabinet;
        const near = Math.min(...ends.map((corner) => distanceOf(corner, front)));
        // The stand is as wide as whole layers make it, half a layer off on each side at most.
        expect(near).toBeLessThan(plan.stand[name].thickness);
        expect(lift).toBeGreaterThanOrEqual(0);
      }),
      { numRuns: runs(40) },
    );
  });

  it('turn over in the middle line when the arrangement is mirrored', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 300, max: 600 }),
        fc.integer({ min: 300, max: 600 }),
        fc.integer({ min: 200, max: 350 }),
        fc.integer({ min: -60, max: 60 }),
        (a, b, y, offset) => {
          const one = top(scene({ left: { x: -a, y: 250 }, right: { x: b, y }, offset }));
          const other = top(scene({ left: { x: -b, y }, right: { x: a, y: 250 }, offset: -offset }));
          const flip = (points: readonly Point[]): Point[] => points.map(([x, up]) => [-x, up]);
          for (const [name, opposite] of [
            ['left', 'right'],
            ['right', 'left'],
          ] as const) {
            for (const shape of [(whose: string) => `cabinet-${whose}`, (whose: string) => `driver-${whose}-1`]) {
              expectSameShape(outlineOf(one, shape(name)).points, flip(outlineOf(other, shape(opposite)).points));
            }
            const axis = flip(outlineOf(other, `axis-${opposite}`).points);
            outlineOf(one, `axis-${name}`).points.forEach(([x, up], index) => {
              expect(x).toBeCloseTo(axis[index]?.[0] ?? NaN, 6);
              expect(up).toBeCloseTo(axis[index]?.[1] ?? NaN, 6);
            });
          }
        },
      ),
      { numRuns: runs(30) },
    );
  });

  it('name an input only where the project holds that very value', () => {
    const check = (made: Scene): void => {
      for (const view of everyView(made)) {
        for (const item of view.items) {
          if (item.kind !== 'dimension' && item.kind !== 'angle') continue;
          if (item.input === undefined) continue;
          const held = resolve(made.project, item.input);
          expect(held, item.input).toBeTypeOf('number');
          const shown = (Number(held) - ((item.kind === 'dimension' && item.inputZero) || 0)) * (item.inputSign ?? 1);
          expect(shown + 0, item.input).toBeCloseTo(item.value, 9);
        }
      }
    };
    check(scene());
    check(scene({ offset: -40, left: { x: -500, y: 260 } }));
    check(scene({ earHeight: 930, tilt: { rule: 'as-set', degrees: -6 }, lift: 60 }));
    fc.assert(fc.property(scenes, check), { numRuns: runs(30) });
  });

  it('leave out the pointer of what a rule solves', () => {
    const input = (view: View, id: string): string | undefined => {
      const item = view.items.find((one: Item) => one.id === id);
      if (item?.kind !== 'dimension' && item?.kind !== 'angle') throw new Error(`no dimension ${id}`);
      return item.input;
    };
    expect(input(side(scene(), 'right'), 'tilt')).toBeUndefined();
    expect(input(side(scene(), 'right'), 'lift')).toBe('/layouts/0/stand/lift');
    const solvedLift = scene({ tilt: { rule: 'lift-to-ear', degrees: 12 } });
    expect(input(side(solvedLift, 'right'), 'tilt')).toBe('/layouts/0/aim/tilt/degrees');
    expect(input(side(solvedLift, 'right'), 'lift')).toBeUndefined();
  });

  it('put the floor at its own depth, or nearer with the legs broken off, and say the true height either way', () => {
    const made = scene();
    for (const floor of ['true', 'broken'] as const) {
      const view = side(made, 'right', floor);
      const height = view.items.find(({ id }) => id === 'desk-height');
      expect(height).toMatchObject({ kind: 'dimension', value: made.layout.desk.height });
    }
    expect(floorLevel(made.layout, 'true')).toBe(-made.layout.desk.height);
    expect(floorLevel(made.layout, 'broken')).toBeGreaterThan(-made.layout.desk.height);
  });

  it('draw a reflection only where its surface is', () => {
    const ids = (made: Scene): string[] => top(made).items.map(({ id }) => id);
    expect(ids(scene())).toContain('reflection-right-wall-0');
    expect(ids(scene({ wallGap: null })).filter((id) => id.includes('-wall'))).toEqual([]);
  });

  it('draw a driver whole where the baffle faces the eye and dashed where it is turned away', () => {
    expect(outlineOf(side(scene(), 'right'), 'driver-right-1').pen).toBe('hidden');
    expect(outlineOf(side(scene(), 'left'), 'driver-left-1').pen).toBe('narrow');
  });
});

const distanceOf = (a: Vec3, b: Vec3 | undefined): number =>
  b === undefined ? Infinity : Math.hypot(a.x - b.x, a.y - b.y, a.z - b.z);

/** Float dust after an aim was solved for each arrangement by itself. mm. */
const SOLVED = 1e-6;

/** Each convex shape holds every corner of the other. */
function expectSameShape(one: readonly Point[], other: readonly Point[]): void {
  const [a, b] = [convexHull(one), convexHull(other)];
  for (const point of a) expect(depthIn(b, point)).toBeGreaterThan(-SOLVED);
  for (const point of b) expect(depthIn(a, point)).toBeGreaterThan(-SOLVED);
}
