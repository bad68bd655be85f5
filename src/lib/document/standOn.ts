import { pointWithin } from '$lib/geometry/gapWithin.ts';
import type { Point } from '$lib/geometry/point.ts';
import { deskShape } from '$lib/project/deskShape.ts';
import { pointerTo } from '$lib/project/fault.ts';
import {
  sideNames,
  type Layout,
  type Project,
  type SideName,
  type Speaker,
  type Surface,
} from '$lib/project/project.ts';
import { DESK, FLOOR, surfaceOutline } from '$lib/project/surface.ts';
import { towards } from '$lib/project/wall.ts';
import type { Edit } from './edit.ts';
import { mirrorEdit } from './mirror.ts';

const MARK = /\/placement\/(left|right)\/(x|y)$/;

/**
 * The edits of moved marks with what they take along: a mark that comes onto a surface, seen from above, stands on it from then
 * on, on the highest of several; one that leaves its surface for the desk stands on that. A mark that was over or under a
 * surface before stays on what it is on.
 *
 * @param from The layout before the move. @param both Whether the other mark mirrors what is edited.
 */
export function withCarriers(from: Layout, index: number, edits: readonly Edit[], both: boolean): readonly Edit[] {
  if (from.surfaces.length === 0 && sideNames.every((side) => from.placement[side].on === DESK)) return edits;
  const all = both ? edits.flatMap((edit) => [edit, ...mirrorEdit(edit)]) : edits;
  const moved = { left: { ...from.placement.left }, right: { ...from.placement.right } };
  for (const [pointer, value] of all) {
    const [, side, axis] = MARK.exec(pointer) ?? [];
    if ((side === 'left' || side === 'right') && (axis === 'x' || axis === 'y') && typeof value === 'number') {
      moved[side][axis] = value;
    }
  }
  return [
    ...edits,
    ...sideNames.flatMap((side): Edit[] => {
      const { x, y, on } = from.placement[side];
      const to = moved[side];
      if (to.x === x && to.y === y) return [];
      const now = carrierAt(from, on, [x, y], [to.x, to.y]);
      return [[pointerTo('layouts', index, 'placement', side, 'on'), now]];
    }),
  ];
}

function carrierAt(layout: Layout, on: string, from: Point, to: Point): string {
  const holds = (surface: Surface, at: Point): boolean => pointWithin(surfaceOutline(surface), at).gap >= 0;
  const holdsDesk = (at: Point): boolean => pointWithin(deskShape(layout.desk), at).gap >= 0;
  const [come] = layout.surfaces
    .filter((one) => one.name !== on && holds(one, to) && !holds(one, from))
    .sort((a, b) => b.height - a.height);
  if (come) return come.name;
  const own = layout.surfaces.find(({ name }) => name === on);
  if (own ? !holds(own, to) && holdsDesk(to) : on === FLOOR && holdsDesk(to) && !holdsDesk(from)) return DESK;
  return on;
}

/**
 * Edits that put a loudspeaker on the desk, the floor or a surface; on a surface its mark goes to the nearest place where the
 * cabinet finds room.
 *
 * @param both Whether the other mark mirrors this one: then the other loudspeaker goes along, if it comes to be on it too.
 */
export function standOn(
  { speaker, layouts }: Project,
  index: number,
  side: SideName,
  on: string,
  both: boolean,
): readonly Edit[] {
  const layout = layouts[index];
  if (!layout) return [];
  const at = (which: SideName, key: string): string => pointerTo('layouts', index, 'placement', which, key);
  const surface = layout.surfaces.find(({ name }) => name === on);
  const { x, y } = layout.placement[side];
  const [toX, toY] = surface ? nearestOn(surface, speaker, [x, y]) : [x, y];
  const other = side === 'left' ? 'right' : 'left';
  const along = both && (!surface || pointWithin(surfaceOutline(surface), [-toX, toY]).gap >= 0);
  return [
    [at(side, 'on'), on],
    [at(side, 'x'), toX],
    [at(side, 'y'), toY],
    ...(along ? [[at(other, 'on'), on] as const] : []),
  ];
}

/** Places that a tape shows, mm. */
const WHOLE = 1;

function nearestOn({ x, y, width, depth, turn }: Surface, speaker: Speaker, [fromX, fromY]: Point): Point {
  const [sin, cos] = towards(turn);
  const [right, back] = [(fromX - x) * cos - (fromY - y) * sin, (fromX - x) * sin + (fromY - y) * cos];
  const aside = Math.max(0, (width - speaker.width) / 2);
  const deep = Math.max(0, depth - speaker.depth);
  const [u, v] = [Math.min(Math.max(right, -aside), aside), Math.min(Math.max(back, 0), deep)];
  if (u === right && v === back) return [fromX, fromY];
  const place = (value: number): number => (turn === 0 ? value : Math.round(value / WHOLE) * WHOLE) + 0;
  return [place(x + u * cos + v * sin), place(y - u * sin + v * cos)];
}
