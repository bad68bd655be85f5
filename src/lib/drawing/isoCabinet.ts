import type { Point } from '$lib/geometry/point.ts';
import type { SidePlan, StandPlan } from '$lib/solution/document.ts';
import type { SideName, Speaker } from '$lib/project/project.ts';
import { cornerOf } from './cabinetFrame.ts';
import { cabinetItems } from './cabinetItems.ts';
import { liesOn, type Segment } from './coincide.ts';
import { driverItems } from './driverItems.ts';
import { inStand, isometric, isometricOf } from './isometric.ts';
import { partsInSight } from './prismHides.ts';
import type { Item } from './view.ts';

/** The twelve edges of a cabinet, as corners of the plan's eight. */
const EDGES = [0, 1, 2, 3].flatMap((corner) => {
  const next = (corner + 1) % 4;
  return [
    [corner, next],
    [corner + 4, next + 4],
    [corner, corner + 4],
  ] as const;
});

/**
 * The cabinet as a neighbour of its stand: the edges that face the eye, each once and only where the stand does not hide it,
 * and the rims of its drivers. It hides nothing itself. `drawn`: lines of the stand; what falls on one is not drawn again.
 */
export function isoCabinet(
  speaker: Speaker,
  placed: SidePlan,
  stand: StandPlan,
  side: SideName,
  drawn: readonly Segment[],
): Item[] {
  const projection = isometricOf(side, placed);
  const facing = cabinetItems(side, placed, projection).flatMap((item) =>
    item.kind === 'outline' && item.pen === 'narrow' ? linesOf(item.points, true) : [],
  );
  const edges = EDGES.flatMap(([a, b]): Item[] => {
    const [from, to] = [cornerOf(placed, a), cornerOf(placed, b)];
    if (!liesOn([projection.flat(from), projection.flat(to)], facing)) return [];
    return partsInSight(stand.profile, stand.width, inStand(side, placed, from), inStand(side, placed, to))
      .map(([start, end]): Segment => [isometric.flat(start), isometric.flat(end)])
      .filter((part) => !liesOn(part, drawn))
      .map((points, part) => ({
        kind: 'outline',
        id: `cabinet-edge-${a}-${b}-${part}`,
        subject: 'cabinet',
        pen: 'phantom',
        points,
        closed: false,
        filled: false,
      }));
  });
  const rims = driverItems(side, placed, speaker, projection).flatMap((item): Item[] =>
    item.kind === 'outline' && item.filled ? [{ ...item, pen: 'phantom', filled: false, rank: 2 }] : [],
  );
  return [...edges, ...rims];
}

/** The straight lines through points, one by one. */
export function linesOf(points: readonly Point[], closed: boolean): Segment[] {
  const ends = closed ? [...points, ...points.slice(0, 1)] : points;
  return ends.slice(1).flatMap((to, index): Segment[] => {
    const from = ends[index];
    return from ? [[from, to]] : [];
  });
}
