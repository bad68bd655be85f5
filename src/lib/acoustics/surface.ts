import { vec3, type Vec3 } from '$lib/geometry/point.ts';
import type { Desk, Layout, Monitor } from '$lib/project/project.ts';
import type { Plane } from './bounce.ts';
import { rectangularPlate, type Plate } from './plate.ts';

/** What sends sound back. */
export type SurfaceName = 'desk' | 'wall' | 'left-wall' | 'right-wall' | 'ceiling' | 'monitor';

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

/** The desk's top, and the wall behind it when the project gives its distance. */
const surfacesOf = (desk: Desk): Surface<'desk' | 'wall'>[] =>
  desk.wallGap === null ? [deskTop(desk)] : [deskTop(desk), wallBehind(desk, desk.wallGap)];

/**
 * Everything flat near the loudspeakers that the layout names: desk, wall behind, left and right wall, ceiling, and the
 * face of each monitor, in this order. The absorption of each is its share of the energy at random incidence, taken as
 * the same at all angles and frequencies; a monitor's face keeps none. The floor is left out: the desk stands in its
 * way.
 */
export function surfacesAround({ desk, room, monitors }: Pick<Layout, 'desk' | 'room' | 'monitors'>): RoomSurface[] {
  const { absorption } = room;
  const keeps = { desk: absorption.desk, wall: absorption.wall } as const;
  const flat = (surface: Surface, absorbed: number): RoomSurface => ({
    ...surface,
    absorption: absorbed,
    monitor: null,
  });
  const top = room.ceiling === null ? Infinity : room.ceiling - desk.height;
  const upright = ({ z }: Vec3): boolean => z >= -desk.height && z <= top;
  const sides = [
    ...(room.leftWall === null ? [] : [sideWall('left-wall', -room.leftWall, upright)]),
    ...(room.rightWall === null ? [] : [sideWall('right-wall', room.rightWall, upright)]),
  ];
  return [
    ...surfacesOf(desk).map((surface) => flat(surface, keeps[surface.name])),
    ...sides.map((surface) => flat(surface, absorption.sides)),
    ...(room.ceiling === null ? [] : [flat(ceilingAt(top), absorption.ceiling)]),
    ...monitors.map((monitor, index) => ({ ...monitorFace(monitor), absorption: 0, monitor: index })),
  ];
}

const deskTop = (desk: Desk): Surface<'desk'> => ({
  name: 'desk',
  plane: { through: vec3(0, 0, 0), normal: vec3(0, 0, 1) },
  holds: ({ x, y }) => Math.abs(x) <= desk.width / 2 && y >= 0 && y <= desk.depth,
  plate: rectangularPlate(vec3(-desk.width / 2, 0, 0), vec3(desk.width, 0, 0), vec3(0, desk.depth, 0)),
});

/** The wall runs on to both sides and upwards; it ends at the floor. */
const wallBehind = (desk: Desk, gap: number): Surface<'wall'> => ({
  name: 'wall',
  plane: { through: vec3(0, desk.depth + gap, 0), normal: vec3(0, -1, 0) },
  holds: ({ z }) => z >= -desk.height,
  plate: null,
});

/** Side walls run on to the front and the back. */
const sideWall = (name: 'left-wall' | 'right-wall', x: number, holds: Surface['holds']): Surface => ({
  name,
  plane: { through: vec3(x, 0, 0), normal: vec3(x < 0 ? 1 : -1, 0, 0) },
  holds,
  plate: null,
});

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
  plate: null,
});
