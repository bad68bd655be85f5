import { add, cross, dot, scale, subtract, type Vec3 } from '$lib/geometry/point.ts';
import type { SidePlan } from '$lib/solution/document.ts';
import type { SideName } from '$lib/project/project.ts';
import { cornerOf } from './cabinetFrame.ts';
import { convexHull } from './hull.ts';
import type { Projection } from './projection.ts';
import { projectSolid, type Face } from './solid.ts';
import type { Item } from './view.ts';

/** Bottom, top, baffle, rear, outboard and inboard face, as corners of the plan's eight. */
const LOOPS = [
  [0, 1, 2, 3],
  [4, 5, 6, 7],
  [0, 1, 5, 4],
  [3, 2, 6, 7],
  [0, 3, 7, 4],
  [1, 2, 6, 5],
] as const;

const middle = (points: readonly Vec3[]): Vec3 => {
  const sum = points.reduce(add, { x: 0, y: 0, z: 0 });
  return scale(sum, 1 / Math.max(1, points.length));
};

function faceOf(side: SidePlan, loop: readonly number[], centre: Vec3): Face {
  const [a, b, c] = loop.map((index) => cornerOf(side, index));
  const normal = a && b && c ? cross(subtract(b, a), subtract(c, b)) : side.axis;
  const outwards = dot(normal, subtract(middle(loop.map((index) => cornerOf(side, index))), centre));
  return { loop, normal: outwards < 0 ? scale(normal, -1) : normal };
}

/** One cabinet: its outline, the edges that face the eye, and the baffle's edges dashed where they are hidden. */
export function cabinetItems(name: SideName, side: SidePlan, projection: Projection): Item[] {
  const centre = middle(side.cabinet);
  const faces = LOOPS.map((loop) => faceOf(side, loop, centre));
  const seen = projectSolid({ corners: side.cabinet, faces }, projection);
  const common = { subject: 'cabinet' } as const;
  return [
    {
      ...common,
      kind: 'outline',
      id: `cabinet-${name}`,
      pen: 'wide',
      points: convexHull(side.cabinet.map(projection.flat)),
      closed: true,
      filled: true,
    },
    ...seen.faces.map((points, index): Item => ({
      ...common,
      kind: 'outline',
      id: `cabinet-${name}-face-${index}`,
      pen: 'narrow',
      points,
      closed: true,
      filled: false,
    })),
    ...seen.hiddenEdges.map((points, index): Item => ({
      ...common,
      kind: 'outline',
      id: `cabinet-${name}-hidden-${index}`,
      pen: 'hidden',
      points,
      closed: false,
      filled: false,
    })),
  ];
}
