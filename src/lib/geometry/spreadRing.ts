import { along, cross, scale, vec3, type Vec3 } from './point.ts';
import type { Ellipse } from './spreadEllipse.ts';

/** Points of a ring that is drawn: as smooth as a circle at any size on a page. */
const POINTS = 48;

/**
 * An ellipse in the plane square to an axis, as a ring of points in space round a point of it, counter-clockwise as seen from
 * where the axis goes: its first direction level and to the right from there, the second up. The axis must not be plumb.
 */
export function spreadRing(at: Vec3, axis: Vec3, { major, minor, turn }: Ellipse): readonly Vec3[] {
  const across = scale(vec3(-axis.y, axis.x, 0), 1 / Math.hypot(axis.x, axis.y));
  const up = cross(axis, across);
  const [cos, sin] = [Math.cos(turn), Math.sin(turn)];
  return Array.from({ length: POINTS }, (_, i) => {
    const angle = (2 * Math.PI * i) / POINTS;
    const [a, b] = [major * Math.cos(angle), minor * Math.sin(angle)];
    return along(along(at, across, a * cos - b * sin), up, a * sin + b * cos);
  });
}
