import * as v from 'valibot';
import { deskShape } from '$lib/project/deskShape.ts';
import { wall } from '$lib/project/fields/desk.ts';
import { startOf } from '$lib/project/fields/starts.ts';
import { heldFrom, withoutDust } from '$lib/project/fromZero.ts';
import type { Layout, Project, Wall } from '$lib/project/project.ts';
import { outlineSchema } from '$lib/project/schema.ts';
import { reachOf, towards, wayTo, type WallWay } from '$lib/project/wall.ts';
import type { Edit } from './edit.ts';
import { freeName } from './freeName.ts';
import { listAt, valueAt } from './pointer.ts';

/** How far a layout's desk reaches towards a bearing, mm from the origin; 0 while that is no number. */
export const reachAt = ({ desk }: Layout, bearing: unknown): number =>
  typeof bearing === 'number' && Number.isFinite(bearing) ? reachOf(towards(bearing), deskShape(desk).points) : 0;

type Way = readonly [WallWay, name: string, bearing: number];

/** The ways a wall may lie, the likeliest first, and what one there is called. */
const ways: readonly [Way, ...Way[]] = [
  ['back', 'behind', 0],
  ['left', 'left', -90],
  ['right', 'right', 90],
  ['front', 'behind the chair', 180],
];

/** Gap between a desk and a wall that is not measured yet, mm; behind a chair there is more. */
const GAP = 100;
const ROOM_TO_SIT = 1000;

/** Another wall, where there is none yet. */
export function newWall(layout: Layout): Wall {
  const { walls } = layout.room;
  const [way, name, bearing] = ways.find(([one]) => !walls.some((other) => wayTo(other) === one)) ?? ways[0];
  const seat = way === 'front' ? Math.max(0, layout.listener.setback) + ROOM_TO_SIT : 0;
  const distance = Math.max(seat, Math.ceil(reachAt(layout, bearing)) + GAP);
  return { ...startOf(wall), name: unusedName(name, walls), bearing, distance };
}

const unusedName = (name: string, walls: readonly Wall[]): string =>
  walls.some((one) => one.name === name) ? freeName(name, walls) : name;

/** Place of the wall whose gap is asked for first, the one behind the desk; −1 where there is none. */
export const wallBehind = (walls: readonly unknown[]): number =>
  walls.findIndex((one) => {
    const bearing = valueAt(one, '/bearing') ?? 0;
    return typeof bearing === 'number' && wayTo({ bearing }) === 'back';
  });

/** The edit that puts the wall behind the desk so far from it; null: there is none. What is no number is held as it is. */
export function gapBehind(layout: Layout, walls: readonly unknown[], at: string, gap: unknown): Edit {
  const index = wallBehind(walls);
  if (gap === null) return [at, walls.filter((_, place) => place !== index)];
  const wallThere = index < 0 ? newBehind(layout) : walls[index];
  const distance = heldFrom(gap, reachAt(layout, valueAt(wallThere, '/bearing') ?? 0));
  return index < 0 ? [at, [...walls, { ...newBehind(layout), distance }]] : [`${at}/${index}/distance`, distance];
}

const newBehind = ({ room }: Layout): Wall => ({
  ...startOf(wall),
  name: unusedName('behind', room.walls),
  bearing: 0,
  distance: 0,
});

const OUTLINE = /^\/layouts\/(\d+)\/desk\/outline(\/|$)/;

/**
 * What keeps the gaps between a desk and its walls when edits give the desk another size: somebody measured the gaps. From
 * the last sound project, for a number half typed is no size.
 *
 * @param draft With the edits made.
 */
export function wallsKept(draft: unknown, project: Project, edits: readonly Edit[]): readonly Edit[] {
  const index = edits.flatMap(([pointer]) => OUTLINE.exec(pointer)?.[1] ?? [])[0];
  const layout = project.layouts[Number(index)];
  if (index === undefined || layout === undefined) return [];
  const at = `/layouts/${index}`;
  const outline = v.safeParse(outlineSchema, valueAt(draft, `${at}/desk/outline`));
  const walls = listAt(draft, `${at}/room/walls`);
  if (!outline.success || walls.length !== layout.room.walls.length) return [];
  const resized = { ...layout, desk: { ...layout.desk, outline: outline.output } };
  return layout.room.walls.flatMap(({ bearing, distance }, place): Edit[] => {
    const grown = reachAt(resized, bearing) - reachAt(layout, bearing);
    const pointer = `${at}/room/walls/${place}/distance`;
    return grown === 0 && valueAt(draft, pointer) === distance ? [] : [[pointer, withoutDust(distance + grown)]];
  });
}
