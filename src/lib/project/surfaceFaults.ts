import { signedArea } from '$lib/geometry/area.ts';
import { overlapConvex } from '$lib/geometry/clipConvex.ts';
import { polygonPath } from '$lib/geometry/contour.ts';
import { gapWithin, pointWithin } from '$lib/geometry/gapWithin.ts';
import type { Point } from '$lib/geometry/point.ts';
import { deskShape } from './deskShape.ts';
import { pointerTo, type Fault } from './fault.ts';
import { sideNames, type Layout, type Surface } from './project.ts';
import { asMm, asTyped, bare, says, type Words } from './sentence.ts';
import { DESK, FLOOR, footCorners, outlineUnder, surfaceCalled, surfaceCorners, surfaceEdges } from './surface.ts';
import { gapToWall, wallText } from './wall.ts';

/** Plates that touch overlap by the dust of rounding, mm; and mm². */
const DUST = 1e-6;

/**
 * Surfaces that cannot be where they are, and marks that are not on theirs. Names are looked at elsewhere and count as
 * known here. @param index Number of the layout, from 0.
 */
export function surfaceFaults(layout: Layout, index: number): Fault[] {
  if (layout.surfaces.length === 0) return [];
  return [
    ...layout.surfaces.flatMap((surface, place) =>
      wrongWith(layout, surface, place).map(({ at, message }) => ({
        pointer: pointerTo('layouts', index, 'surfaces', place, at),
        message,
      })),
    ),
    ...sideNames.flatMap((side): Fault[] => {
      const { x, y, on } = layout.placement[side];
      const outline = outlineUnder(layout, side);
      if (on === DESK || !outline) return [];
      const { gap, edge } = pointWithin(outline, [x, y]);
      if (gap >= -DUST) return [];
      return [
        {
          pointer: pointerTo('layouts', index, 'placement', side, edge % 2 === 0 ? 'y' : 'x'),
          message: says`expected a mark on ${surfaceCalled(on)}, got one ${asMm(-gap)} off its ${surfaceEdges[edge] ?? 'front'} edge: move it, or let the stand be on something else`,
        },
      ];
    }),
  ];
}

interface Wrong {
  readonly at: keyof Surface;
  readonly message: Words;
}

function wrongWith(layout: Layout, surface: Surface, place: number): Wrong[] {
  const { desk, surfaces, room } = layout;
  const { name, on, height, thickness } = surface;
  if (name === DESK || name === FLOOR) {
    return [{ at: 'name', message: `expected a name other than "${name}", which every layout has` }];
  }
  if (thickness > height + DUST) {
    return [{ at: 'thickness', message: says`expected a plate over the floor, at most ${asMm(height)} thick, got ${bare(asTyped(thickness))}` }]; // prettier-ignore
  }
  const corners = surfaceCorners(surface);
  const other = surfaces.slice(0, place).find((before) => areIn(before, surface));
  if (other) {
    return [{ at: 'height', message: says`expected a plate clear of ${surfaceCalled(other.name)}, got one that reaches into it: change its height or its place` }]; // prettier-ignore
  }
  // A desk that turns inwards leaves parts joined by lines: their area is right nevertheless.
  const { points } = deskShape(desk);
  const overDesk = areaOf(overlapConvex(points, corners)) > DUST;
  if (overDesk && height > desk.height + DUST && height - thickness < desk.height - DUST) {
    return [{ at: 'height', message: says`expected a plate clear of the desk’s top, at least ${asMm(desk.height + thickness)} over the floor or at most ${asMm(desk.height)}, got ${bare(asTyped(height))}` }]; // prettier-ignore
  }
  if (on === 'floor' && height > desk.height + DUST && pointWithin(deskShape(desk), middleOf(corners)).gap > DUST) {
    return [{ at: 'y', message: 'expected a floor stand beside the desk, got one whose column would run through it' }];
  }
  if (on === 'desk') {
    if (height - thickness < desk.height - DUST) {
      return [{ at: 'height', message: says`expected a riser that stands on the desk, at least ${asMm(desk.height + thickness)} over the floor, got ${bare(asTyped(height))}` }]; // prettier-ignore
    }
    const { gap } = gapWithin(deskShape(desk), footCorners(surface));
    if (gap < -DUST) {
      return [{ at: 'y', message: says`expected a riser whose base is on the desk, got one ${asMm(-gap)} over its edge` }]; // prettier-ignore
    }
  }
  const wall = room.walls.find((one) => gapToWall(one, corners) < -DUST);
  return wall
    ? [{ at: 'y', message: says`expected a plate on this side of the ${wallText(wall.name)}, got one that reaches ${asMm(-gapToWall(wall, corners))} into it` }] // prettier-ignore
    : [];
}

/** Whether two plates share some of the same place. */
function areIn(one: Surface, other: Surface): boolean {
  const shared = Math.min(one.height, other.height) - Math.max(one.height - one.thickness, other.height - other.thickness); // prettier-ignore
  return shared > DUST && areaOf(overlapConvex(surfaceCorners(one), surfaceCorners(other))) > DUST;
}

const areaOf = (points: readonly Point[]): number => (points.length < 3 ? 0 : signedArea(polygonPath(points)));

const middleOf = (corners: readonly Point[]): Point => {
  const [[x, y] = [0, 0], , [toX, toY] = [0, 0]] = corners;
  return [(x + toX) / 2, (y + toY) / 2];
};
