import { along, vec3, type Vec3 } from '$lib/geometry/point.ts';
import { sixSided, uprightBox, type Solid } from '$lib/geometry/solid.ts';
import type { Desk, Monitor, Surface } from '$lib/project/project.ts';
import { surfaceCorners } from '$lib/project/surface.ts';
import { bendOf, flatFace, squareAt, type ScreenFace } from '$lib/project/screenFaces.ts';

/** A face without thickness has no volume to lie in; it is treated as a plate this thick, mm. */
const THINNEST_MONITOR = 0.1;

/** The screen as bodies: its front face at y, its depth behind that; a box, or a strip each of a curved one. */
export function monitorBodies(monitor: Monitor): readonly Solid[] {
  const bend = bendOf(monitor);
  if (bend === null) return [monitorHull(monitor)];
  const { depth, height } = monitor;
  const face = flatFace(monitor);
  const behind = ({ point, angle }: (typeof bend)[number]): Vec3 =>
    along(point, squareAt(face, angle), -thickness(depth));
  return bend.slice(1).map((to, index) => {
    const from = bend[index] ?? to;
    return standing([from.point, to.point, behind(to), behind(from)], face, height);
  });
}

/** The box round all of a screen, turned and leaning as it is: its face and back, with what a bend comes forward. */
export function monitorHull(monitor: Monitor): Solid {
  const { x, y, bottom, width, height, depth, turn, lean, curve } = monitor;
  if (turn === 0 && lean === 0 && curve === null) {
    return uprightBox(vec3(x - width / 2, y, bottom), vec3(width, thickness(depth), height));
  }
  const face = flatFace(monitor);
  const forward = curve === null ? 0 : curve - Math.sqrt(Math.max(0, curve ** 2 - (width / 2) ** 2));
  const at = (aside: number, out: number): Vec3 => along(along(face.middle, face.across, aside), face.normal, out);
  const half = width / 2;
  const back = -thickness(depth);
  return standing([at(-half, forward), at(half, forward), at(half, back), at(-half, back)], face, height);
}

const thickness = (depth: number): number => Math.max(depth, THINNEST_MONITOR);

const standing = (base: readonly Vec3[], { up }: ScreenFace, height: number): Solid =>
  sixSided([...base, ...base.map((corner) => along(corner, up, height))]);

/** The corners of a surface's plate: four round its underside, then the four of its top over them. Desk frame, mm. */
function plateCorners(surface: Surface, desk: Pick<Desk, 'height'>): Vec3[] {
  const top = surface.height - desk.height;
  const corners = surfaceCorners(surface);
  return [top - surface.thickness, top].flatMap((z) => corners.map(([x, y]) => vec3(x, y, z)));
}

/** The plate of a surface as a body. */
export const plateBody = (surface: Surface, desk: Pick<Desk, 'height'>): Solid => sixSided(plateCorners(surface, desk));
