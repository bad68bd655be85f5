import { between, vec3, type Point, type Vec3 } from '$lib/geometry/point.ts';
import { isometric } from './isometric.ts';

/** What lies on the surface is not behind it: a way into the body counts from here on, mm. */
const START = 1e-6;

/**
 * The parts of a straight line that a prism leaves in sight of the eye at (1, −1, 1); the prism as for `seenFaces`. Exact: a
 * line can only pass out of sight where, in the view, it crosses an edge, or where it goes through a face, so each part
 * between two such places is seen or hidden as its middle is.
 */
export function partsInSight(
  profile: readonly Point[],
  width: number,
  from: Vec3,
  to: Vec3,
): (readonly [Vec3, Vec3])[] {
  const line = [isometric.flat(from), isometric.flat(to)] as const;
  const crossings = edgesOf(profile, width).flatMap(([a, b]) => crossing(line, [isometric.flat(a), isometric.flat(b)]));
  const stops = [0, ...crossings, ...piercings(profile, width, from, to), 1]
    .sort((a, b) => a - b)
    .filter((t, i, all) => i === 0 || t > (all[i - 1] ?? t));
  const parts: [number, number][] = [];
  stops.slice(1).forEach((end, index) => {
    const start = stops[index] ?? 0;
    if (hides(profile, width, between(from, to, (start + end) / 2))) return;
    const last = parts.at(-1);
    if (last?.[1] === start) last[1] = end;
    else parts.push([start, end]);
  });
  return parts.map(([start, end]) => [between(from, to, start), between(from, to, end)]);
}

function edgesOf(profile: readonly Point[], width: number): (readonly [Vec3, Vec3])[] {
  const [near, far] = [width / 2, -width / 2];
  return profile.flatMap(([y, z], index) => {
    const [nextY, nextZ] = profile[(index + 1) % profile.length] ?? [y, z];
    return [
      [vec3(near, y, z), vec3(near, nextY, nextZ)],
      [vec3(far, y, z), vec3(far, nextY, nextZ)],
      [vec3(far, y, z), vec3(near, y, z)],
    ] as const;
  });
}

const minus = (a: Point, b: Point): Point => [a[0] - b[0], a[1] - b[1]];
const cross = ([a, b]: Point, [c, d]: Point): number => a * d - b * c;

/** Where a line crosses another, as a share of its length; nothing for lines that miss each other or are parallel. */
function crossing([a, b]: readonly [Point, Point], [c, d]: readonly [Point, Point]): number[] {
  const [way, edge, gap] = [minus(b, a), minus(d, c), minus(c, a)];
  const slant = cross(way, edge);
  if (slant === 0) return [];
  const [t, share] = [cross(gap, edge) / slant, cross(gap, way) / slant];
  return t > 0 && t < 1 && share >= 0 && share <= 1 ? [t] : [];
}

/** Where a line goes through the plane of a face, as a share of its length. */
function piercings(profile: readonly Point[], width: number, from: Vec3, to: Vec3): number[] {
  const [start, way]: readonly [Point, Point] = [
    [from.y, from.z],
    [to.y - from.y, to.z - from.z],
  ];
  const sides = profile.map((a, index) => {
    const edge = minus(profile[(index + 1) % profile.length] ?? a, a);
    return cross(minus(a, start), edge) / cross(way, edge);
  });
  const ends = [width / 2, -width / 2].map((x) => (x - from.x) / (to.x - from.x));
  return [...sides, ...ends].filter((t) => t > 0 && t < 1);
}

const TO_EYE: Point = [-1, 1];

/** Whether the way from a point to the eye leads through the prism. */
function hides(profile: readonly Point[], width: number, { x, y, z }: Vec3): boolean {
  const walls = profile
    .flatMap((a, index) => {
      const edge = minus(profile[(index + 1) % profile.length] ?? a, a);
      const gap = minus(a, [y, z]);
      const slant = cross(TO_EYE, edge);
      if (slant === 0) return [];
      const [reach, share] = [cross(gap, edge) / slant, cross(gap, TO_EYE) / slant];
      return reach > START && share >= 0 && share < 1 ? [reach] : [];
    })
    .sort((a, b) => b - a);
  // Far away the way is outside the profile, so from the last wall back every second stretch lies inside.
  return walls.some((leaves, index) => {
    if (index % 2 === 1) return false;
    const enters = walls[index + 1] ?? 0;
    return Math.min(x + leaves, width / 2) - Math.max(x + enters, -width / 2) > START;
  });
}
