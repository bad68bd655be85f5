import { convexHull } from '$lib/geometry/convexHull.ts';
import { gapWithin } from '$lib/geometry/gapWithin.ts';
import type { Point, Vec3 } from '$lib/geometry/point.ts';
import { asMm } from '$lib/project/sentence.ts';
import { sideNames, type Layout, type SideName } from '$lib/project/project.ts';
import { DESK, outlineUnder, surfaceEdges } from '$lib/project/surface.ts';
import { gapToWall, wayTo } from '$lib/project/wall.ts';
import type { Finding } from './finding.ts';
import type { Check } from './check.ts';

/** Rounding puts a stand that ends at the edge a hair over it; mm. */
const AT_THE_EDGE = 1e-6;

type Edge = 'front' | 'back' | 'left' | 'right';

/** The edge that a figure lies over furthest, and how far, mm; null where it lies on what carries it. */
function edgeCrossed(figure: readonly Point[], layout: Layout, side: SideName): readonly [Edge, number] | null {
  const outline = outlineUnder(layout, side);
  if (!outline) return null;
  const { points } = outline;
  const { gap, edge } = gapWithin(outline, figure);
  if (gap >= -AT_THE_EDGE) return null;
  if (layout.placement[side].on !== DESK) return [surfaceEdges[edge] ?? 'front', -gap];
  const [from, to] = [points[edge] ?? [0, 0], points[(edge + 1) % points.length] ?? [0, 0]];
  return [sideOf([to[0] - from[0], to[1] - from[1]]), -gap];
}

/** The side of the desk that an edge is on, by the way that it runs round the desk. */
function sideOf([x, y]: Point): Edge {
  if (Math.abs(x) >= Math.abs(y)) return x > 0 ? 'front' : 'back';
  return y > 0 ? 'right' : 'left';
}

/** A stand with part of its base off what it is on, or a cabinet that juts out over the edge. */
const overEdge: Check = ({ layout, footprints, poses }) =>
  sideNames.flatMap((side): Finding[] => {
    const stand = edgeCrossed(footprints[side], layout, side);
    if (stand) {
      const [edge, over] = stand;
      return [
        {
          ...common(side, over),
          code: 'stand-over-edge',
          level: 'fault',
          facts: { edge, on: layout.placement[side].on },
          quantities: { over: asMm(over) },
        },
      ];
    }
    const cabinet = edgeCrossed(convexHull(fromAbove(poses[side].cabinet)), layout, side);
    if (!cabinet) return [];
    const [edge, over] = cabinet;
    return [
      {
        ...common(side, over),
        code: 'cabinet-over-edge',
        level: 'caution',
        facts: { edge, on: layout.placement[side].on },
        quantities: { over: asMm(over) },
      },
    ];
  });

/** A cabinet or stand that would have to stand in a wall. */
const intoWall: Check = ({ layout, footprints, poses }) =>
  layout.room.walls.flatMap((wall, index) =>
    sideNames.flatMap((side): Finding[] => {
      const cabinet = -gapToWall(wall, fromAbove(poses[side].cabinet));
      const stand = -gapToWall(wall, footprints[side]);
      const into = Math.max(cabinet, stand);
      if (into <= AT_THE_EDGE) return [];
      const what = cabinet >= stand ? 'cabinet' : 'stand';
      return [
        {
          ...common(side, into),
          subject: { wall: index },
          code: 'into-wall',
          level: 'fault',
          facts: { what, wall: wall.name, way: wayTo(wall) },
          quantities: { depth: asMm(into) },
        },
      ];
    }),
  );

const fromAbove = (points: readonly Vec3[]): Point[] => points.map(({ x, y }) => [x, y]);

const common = (side: SideName, value: number) =>
  ({ sides: [side], subject: {}, value, limit: 0, unit: 'mm', source: 'geometry' }) as const;

/** In the order in which they are told. */
export const roomChecks: readonly Check[] = [intoWall, overEdge];
