import fc from 'fast-check';
import { radians } from '$lib/geometry/angle.ts';
import type { Point } from '$lib/geometry/point.ts';
import type { StandSettings } from '$lib/project/project.ts';
import { type Profile, profileOf } from '$lib/stand/profile.ts';
import { faultLine } from '$lib/project/fault.ts';
import { firstLayout, project } from '../projects.ts';

/** The settings of a plain wedge. What these tests do not turn on is as the project file has it by default. */
export const plain: StandSettings = {
  ...firstLayout(project()).stand,
  lift: 12,
  build: 'stacked',
  stock: null,
  width: null,
  frontMargin: 0,
  rearMargin: 0,
  ends: 'plumb',
  stop: null,
  minimumEdge: 3,
  rods: { diameter: 6, count: 2, clearance: 0.1, edge: 2 },
  feet: 0,
  pad: 0,
  veneer: 0,
  glue: 0,
  friction: 0.3,
};

export interface Case {
  readonly settings: StandSettings;
  readonly depth: number;
  readonly tilt: number;
  readonly lift: number;
}

export const mm = (min: number, max: number): fc.Arbitrary<number> => fc.double({ min, max, noNaN: true });
export const orZero = (value: fc.Arbitrary<number>): fc.Arbitrary<number> => fc.oneof(fc.constant(0), value);

/** Any tilt a project may hold, level and next to level among them. */
export const tilts = fc.oneof(
  fc.constant(0),
  fc.constantFrom(1e-12, -1e-12, 1e-6, -1e-6),
  fc.double({ min: radians(-60), max: radians(60), noNaN: true }),
);

const stops = fc.option(fc.record({ height: mm(1, 60), thickness: mm(1, 60) }), { nil: null });

/** Any stand a project may hold, thin ends and swallowed profiles included. */
export const anyCase: fc.Arbitrary<Case> = fc.record({
  settings: fc
    .record({
      frontMargin: orZero(mm(0, 100)),
      rearMargin: orZero(mm(0, 100)),
      ends: fc.constantFrom('plumb' as const, 'square' as const),
      stop: stops,
      minimumEdge: mm(0.5, 10),
      feet: orZero(mm(0, 20)),
      pad: orZero(mm(0, 10)),
      veneer: orZero(mm(0.1, 6)),
      veneerFaces: fc.oneof(
        fc.constant(plain.veneerFaces),
        fc.record({
          top: fc.boolean(),
          front: fc.boolean(),
          rear: fc.boolean(),
          sides: fc.boolean(),
          base: fc.boolean(),
        }),
      ),
    })
    .map((drawn): StandSettings => ({ ...plain, ...drawn })),
  depth: mm(20, 600),
  tilt: tilts,
  lift: mm(0, 300),
});

/** The profile of a case that has one; the property skips the others. */
export function soundProfile({ settings, depth, tilt, lift }: Case): Profile {
  const outcome = profileOf(settings, depth, tilt, lift);
  fc.pre(outcome.ok);
  return outcome.value;
}

/** The profile of a case that must have one. */
export function mustBuild(settings: StandSettings, depth: number, tilt: number, lift: number): Profile {
  const outcome = profileOf(settings, depth, tilt, lift);
  if (!outcome.ok) throw new Error(outcome.faults.map(faultLine).join('; '));
  return outcome.value;
}

/** Edges of a closed polygon. */
export const edgesOf = (points: readonly Point[]): [Point, Point][] =>
  points.map((from, i) => [from, points[(i + 1) % points.length] ?? from]);

/** By triangles from the first corner: another sum than the code's. */
export function fanArea(points: readonly Point[]): number {
  const [origin = [0, 0], ...others] = points;
  return others.slice(1).reduce((sum, b, i) => {
    const a = others[i] ?? b;
    return sum + ((a[0] - origin[0]) * (b[1] - origin[1]) - (b[0] - origin[0]) * (a[1] - origin[1])) / 2;
  }, 0);
}

/** Distance from a point to the polygon's edge, by walking along it in small steps. */
export function sampledDistance(points: readonly Point[], [u, z]: Point, steps = 400): number {
  let least = Infinity;
  for (const [from, to] of edgesOf(points)) {
    for (let step = 0; step <= steps; step++) {
      const share = step / steps;
      const [x, y] = [from[0] + (to[0] - from[0]) * share, from[1] + (to[1] - from[1]) * share];
      least = Math.min(least, Math.hypot(u - x, z - y));
    }
  }
  return least;
}

/** How deep a point lies in a convex polygon: least distance to the lines of its edges, negative outside. */
export const depthInConvex = (points: readonly Point[], [u, z]: Point): number =>
  Math.min(
    ...edgesOf(points).map(([a, b]) => {
      const heading = Math.atan2(b[1] - a[1], b[0] - a[0]);
      return (z - a[1]) * Math.cos(heading) - (u - a[0]) * Math.sin(heading);
    }),
  );

/** Whether a point lies inside, by counting the edges to its right. */
export const isInside = (points: readonly Point[], [u, z]: Point): boolean =>
  edgesOf(points).filter(([a, b]) => a[1] > z !== b[1] > z && u < a[0] + ((z - a[1]) / (b[1] - a[1])) * (b[0] - a[0]))
    .length %
    2 ===
  1;

export const everyNumber = (points: readonly Point[]): number[] => points.flatMap(([u, z]) => [u, z]);
