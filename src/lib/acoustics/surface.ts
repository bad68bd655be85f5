import { vec3, type Vec3 } from '$lib/geometry/point.ts';
import type { Desk } from '$lib/project/project.ts';
import type { Plane } from './bounce.ts';

/** Something flat that sends sound back, and how far it reaches. */
export interface Surface {
  readonly name: 'desk' | 'wall';
  readonly plane: Plane;
  /** Whether the surface is there at a point of its plane. */
  readonly holds: (point: Vec3) => boolean;
}

/** The desk's top, and the wall behind it when the project gives its distance. */
export const surfacesOf = (desk: Desk): Surface[] =>
  desk.wallGap === null ? [deskTop(desk)] : [deskTop(desk), wallBehind(desk, desk.wallGap)];

const deskTop = (desk: Desk): Surface => ({
  name: 'desk',
  plane: { through: vec3(0, 0, 0), normal: vec3(0, 0, 1) },
  holds: ({ x, y }) => Math.abs(x) <= desk.width / 2 && y >= 0 && y <= desk.depth,
});

/** The wall runs on to both sides and upwards; it ends at the floor. */
const wallBehind = (desk: Desk, gap: number): Surface => ({
  name: 'wall',
  plane: { through: vec3(0, desk.depth + gap, 0), normal: vec3(0, -1, 0) },
  holds: ({ z }) => z >= -desk.height,
});
