import { vec3, type Vec3 } from '$lib/geometry/point.ts';
import { sixSided, uprightBox, type Solid } from '$lib/geometry/solid.ts';
import type { Desk, Monitor, Surface } from '$lib/project/project.ts';
import { surfaceCorners } from '$lib/project/surface.ts';

/** A face without thickness has no volume to lie in; it is treated as a plate this thick, mm. */
const THINNEST_MONITOR = 0.1;

/** The monitor as a box: its front face at y, its depth behind that. */
export const monitorBody = ({ x, y, bottom, width, height, depth }: Monitor): Solid =>
  uprightBox(vec3(x - width / 2, y, bottom), vec3(width, Math.max(depth, THINNEST_MONITOR), height));

/** The corners of a surface's plate: four round its underside, then the four of its top over them. Desk frame, mm. */
function plateCorners(surface: Surface, desk: Pick<Desk, 'height'>): Vec3[] {
  const top = surface.height - desk.height;
  const corners = surfaceCorners(surface);
  return [top - surface.thickness, top].flatMap((z) => corners.map(([x, y]) => vec3(x, y, z)));
}

/** The plate of a surface as a body. */
export const plateBody = (surface: Surface, desk: Pick<Desk, 'height'>): Solid => sixSided(plateCorners(surface, desk));
