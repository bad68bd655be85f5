import { pointWithin } from '$lib/geometry/gapWithin.ts';
import { radians } from '$lib/geometry/angle.ts';
import { along, dot, scale, subtract, vec3, type Vec3 } from '$lib/geometry/point.ts';
import { deskShape } from '$lib/project/deskShape.ts';
import type { Desk, Layout, Surface as PlacedSurface, Wall } from '$lib/project/project.ts';
import { facesOf, type ScreenFace } from '$lib/project/screenFaces.ts';
import { surfaceOutline } from '$lib/project/surface.ts';
import { towards } from '$lib/project/wall.ts';
import type { Plane } from './bounce.ts';
import { metBy, rectangularPlate, type Plate } from './plate.ts';

/** What sends sound back. */
export type SurfaceName = 'desk' | `wall:${string}` | 'ceiling' | 'monitor' | `surface:${string}`;

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
  /** Absent for anything else. */
  readonly face?: PlateFace;
}

/** One face of a shelf or of a stand's plate, and how high both are over the desk's top, mm. */
interface PlateFace {
  /** Which of the layout's surfaces, from 0. */
  readonly surface: number;
  readonly side: 'top' | 'underside';
  readonly top: number;
  readonly underside: number;
}

/**
 * Everything flat near the loudspeakers that the layout names: desk, walls in their order, ceiling, and the face of each
 * monitor, top and underside of each shelf and stand's plate, in this order. The absorption of each is its share of the energy at random incidence, taken as the same at all
 * angles and frequencies; a monitor's face and a plate keep none. The floor is left out: the desk stands in its way.
 */
export function surfacesAround({
  desk,
  room,
  monitors,
  surfaces,
}: Pick<Layout, 'desk' | 'room' | 'monitors' | 'surfaces'>): RoomSurface[] {
  const flat = (surface: Surface, absorption: number): RoomSurface => ({ ...surface, absorption, monitor: null });
  const { ceiling } = room;
  const top = ceiling === null ? Infinity : ceiling.height - desk.height;
  const upright = ({ z }: Vec3): boolean => z >= -desk.height && z <= top;
  return [
    flat(deskTop(desk), desk.absorption),
    ...room.walls.map((wall) => flat(wallFace(wall, upright), wall.absorption)),
    ...(ceiling === null ? [] : [flat(ceilingAt(top), ceiling.absorption)]),
    ...monitors.flatMap((monitor, index) =>
      facesOf(monitor).map((face) => ({ ...monitorFace(face), absorption: 0, monitor: index })),
    ),
    ...surfaces.flatMap((surface, index) =>
      PLATE_SIDES.map((side) => {
        const top = surface.height - desk.height;
        const face = { surface: index, side, top, underside: top - surface.thickness };
        return { ...flat(plateFace(surface, face), 0), face };
      }),
    ),
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

const PLATE_SIDES = ['top', 'underside'] as const;

function plateFace(surface: PlacedSurface, { side, top, underside }: PlateFace): Surface {
  const outline = surfaceOutline(surface);
  const z = side === 'top' ? top : underside;
  const corners = outline.points.map(([x, y]) => vec3(x, y, z));
  const normal = vec3(0, 0, side === 'top' ? 1 : -1);
  return {
    name: `surface:${surface.name}`,
    plane: { through: corners[0] ?? vec3(0, 0, z), normal },
    holds: ({ x, y }) => pointWithin(outline, [x, y]).gap >= 0,
    plate: { corners: side === 'top' ? corners : corners.reverse(), normal, convex: true },
  };
}

/**
 * The plate that a surface is to the way between two points; null where it is none, or where its other face speaks for it. The
 * two faces of a shelf are one thing to sound: its top where both points are over it, its underside where one is under it,
 * and between the two heights what the lower point is level with, so that nothing jumps.
 */
export function plateBetween({ plate, face }: RoomSurface, a: Vec3, b: Vec3): Plate | null {
  if (plate === null || face === undefined) return plate;
  const lower = Math.min(a.z, b.z);
  if (face.side === 'underside') return lower <= face.underside ? plate : null;
  if (lower <= face.underside) return null;
  return lower >= face.top ? plate : { ...plate, corners: plate.corners.map(({ x, y }) => vec3(x, y, lower)) };
}

/** From this angle on over the plane of a plate it is no longer seen edge-on, radians: about where its first Fresnel zone clears the rim at 2 kHz and 1 m; rule of thumb. */
const EDGE_ON = radians(10);

/**
 * How much of what a plate sends counts between two points, 0…1. A thin plate adds nothing to what is heard in its own plane
 * beside it, which waves that bend once do not know: they fade out as it comes to be seen edge-on from either point. A desk
 * and a screen are not seen so by who sits there, and count whole.
 */
export function countedOf({ face }: RoomSurface, plate: Plate, a: Vec3, b: Vec3): number {
  if (face === undefined) return 1;
  const fromSide = (point: Vec3): number => {
    const met = metBy(plate, point, point);
    const angle = Math.atan2(Math.abs(point.z - met.z), Math.hypot(point.x - met.x, point.y - met.y));
    const share = Math.min(1, angle / EDGE_ON);
    return share * share * (3 - 2 * share);
  };
  return fromSide(a) * fromSide(b);
}

/** The face of a screen, or a strip of it. */
function monitorFace({ middle, across, up, normal, width, height }: ScreenFace): Surface {
  const corner = along(middle, across, -width / 2);
  return {
    name: 'monitor',
    plane: { through: middle, normal },
    holds: (point) => {
      const from = subtract(point, middle);
      const over = dot(from, up);
      return Math.abs(dot(from, across)) <= width / 2 && over >= 0 && over <= height;
    },
    plate: rectangularPlate(corner, scale(across, width), scale(up, height)),
  };
}
