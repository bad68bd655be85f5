import { deskShape } from '$lib/project/deskShape.ts';
import { surface as fields } from '$lib/project/fields/surface.ts';
import { startOf } from '$lib/project/fields/starts.ts';
import type { Layout, Surface } from '$lib/project/project.ts';
import { freeName } from './freeName.ts';

/** From one shelf to the next over it, mm. */
const NEXT = 320;

/** A shelf along the desk's back edge, or along a wall not far behind that; over those that are there. */
export function newSurface({ desk, room, surfaces }: Layout): Surface {
  const plain = startOf(fields);
  const { depth } = deskShape(desk);
  const wall = room.walls.find(({ bearing, distance }) => bearing === 0 && distance - depth <= plain.depth);
  const highest = Math.max(0, ...surfaces.map(({ height }) => height));
  return {
    ...plain,
    name: surfaces.length === 0 ? 'shelf' : freeName('shelf', surfaces),
    y: Math.floor(wall?.distance ?? depth) - plain.depth,
    height: Math.max(plain.height, Math.min(highest + NEXT, fields.height.max)),
  };
}
