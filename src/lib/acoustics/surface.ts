import { pointWithin } from '$lib/geometry/gapWithin.ts';
import { vec3, type Vec3 } from '$lib/geometry/point.ts';
import { deskShape } from '$lib/project/deskShape.ts';
import type { Desk, Layout, Monitor, Wall } from '$lib/project/project.ts';
import { towards } from '$lib/project/wall.ts';
import type { Plane } from './bounce.ts';
import { rectangularPlate, type Plate } from './plate.ts';

/** What sends sound back. */
export type SurfaceName = 'desk' | `wall:${string}` | 'ceiling' | 'monitor';

/** Something flat that sends sound back, and how far it reaches. */
export interface Surface<Name extends SurfaceName = SurfaceName> {
  readonly name: Name;
  readonly plane: Plane;
  /** Whether the surface is there at a point of its plane. */
  readonly holds: (point: Vec3) => boolean;
  /** Its outline, where it ends within the room and sound bends round it; null where it ends at other surfaces. */
  readonly plate: Plate | null;
}

/** A surface of the room with what it does to the sound. */
export interface RoomSurface extends Surface {
  /** Share of the energy that it keeps, 0…1. */
  readonly absorption: number;
  /** Which of the monitors, from 0; null for anything else. */
  readonly monitor: number | null;
}

/**
 * Everything flat near the loudspeakers that the layout names: desk, walls in their order, ceiling, and the face of each
 * monitor, in this order. The absorption of each is its share of the energy at random incidence, taken as the same at all
 * angles and frequencies; a monitor's face keeps none. The floor is left out: the desk stands in its way.
 */
export function surfacesAround({ desk, room, monitors }: Pick<Layout, 'desk' | 'room' | 'monitors'>): RoomSurface[] {
  const flat = (surface: Surface, absorption: number): RoomSurface => ({ ...surface, absorption, monitor: null });
  const { ceiling } = room;
  const top = ceiling === null ? Infinity : ceiling.height - desk.height;
  const upright = ({ z }: Vec3): boolean => z >= -desk.height && z <= top;
  return [
    flat(deskTop(desk), desk.absorption),
    ...room.walls.map((wall) => flat(wallFace(wall, upright), wall.absorption)),
    ...(ceiling === null ? [] : [flat(ceilingAt(top), ceiling.absorption)]),
    ...monitors.map((monitor, index) => ({ ...monitorFace(monitor), absorption: 0, monitor: index })),
  ];
}

function deskTop(desk: Desk): Surface<'desk'> {
  const shape = deskShape(desk);
  return {
    name: 'desk',
    plane: { through: vec3(0, 0, 0), normal: UP },
    holds: ({ x, y }) => pointWithin(shape, [x, y]).gap >= 0,
    plate: { corners: shape.plate.map(([x, y]) => vec3(x, y, 0)), normal: UP, convex: shape.convex },
  };
}

const UP = vec3(0, 0, 1);

/** A wall runs on to both sides. */
function wallFace({ name, bearing, distance }: Wall, holds: Surface['holds']): Surface {
  const [x, y] = towards(bearing);
  return {
    name: `wall:${name}`,
    // Without a negative zero.
    plane: { through: vec3(x * distance, y * distance, 0), normal: vec3(0 - x, 0 - y, 0) },
    holds,
    plate: null,
  };
}

const ceilingAt = (z: number): Surface => ({
  name: 'ceiling',
  plane: { through: vec3(0, 0, z), normal: vec3(0, 0, -1) },
  holds: () => true,
  plate: null,
});

const monitorFace = ({ x, y, bottom, width, height }: Monitor): Surface => ({
  name: 'monitor',
  plane: { through: vec3(x, y, bottom), normal: vec3(0, -1, 0) },
  holds: (point) => Math.abs(point.x - x) <= width / 2 && point.z >= bottom && point.z <= bottom + height,
  plate: rectangularPlate(vec3(x - width / 2, y, bottom), vec3(width, 0, 0), vec3(0, 0, height)),
});
