import { vec3, type Point, type Vec3 } from '$lib/geometry/point.ts';

/**
 * What an eye at (1, −1, 1) sees of a prism: a profile in (y, z), counter-clockwise, drawn out along x to half its width on
 * either side. Exact for any simple profile, hollows included: a point of the surface is hidden when the way from it to the
 * eye enters the prism. That way runs along (−1, 1) in the profile's plane while x grows as fast, so a point is in sight
 * when it leaves at the near end, x = width / 2, before it meets the profile again: everything nearer than a limit that
 * depends on the place along the profile alone, and between the shadows of the profile's corners is linear in it.
 */
export interface SeenFace {
  /** Index of the profile's edge it was drawn out from. */
  readonly edge: number;
  /** The part in sight, as one loop of corners. */
  readonly loop: readonly Vec3[];
  /** The parts in sight of the line at one x across the face. */
  readonly lineAt: (x: number) => readonly (readonly [Vec3, Vec3])[];
}

/** A face seen more nearly edge-on than this (sine of the angle) has no area to show. */
const EDGE_ON = 1e-9;
/** Shorter than a light's way over a sheet of paper's roughness: the start of a way is not where it meets the profile. mm. */
const START = 1e-6;

/** Every drawn-out face with something in sight. The near end itself is in sight as a whole. */
export function seenFaces(profile: readonly Point[], width: number): SeenFace[] {
  return profile.flatMap((from, edge) => {
    const to = profile[(edge + 1) % profile.length] ?? from;
    const [dy, dz] = [to[0] - from[0], to[1] - from[1]];
    if (-dy - dz <= EDGE_ON * Math.hypot(dy, dz)) return [];
    const stretches = stretchesOf(profile, from, to, width);
    const at = (t: number, x: number): Vec3 => vec3(x, from[0] + t * dy, from[1] + t * dz);
    const loop = loopOf(stretches, width / 2, at);
    if (loop.length < 3) return [];
    return [
      { edge, loop, lineAt: (x: number) => linesOf(stretches, x).map(([a, b]) => [at(a, x), at(b, x)] as const) },
    ];
  });
}

/** Between two places along an edge (0…1), the least x in sight at either end; over the width's half where none is. */
interface Stretch {
  readonly start: number;
  readonly end: number;
  readonly startLimit: number;
  readonly endLimit: number;
}

const cross = ([a, b]: Point, [c, d]: Point): number => a * d - b * c;
const TO_EYE: Point = [-1, 1];

function stretchesOf(profile: readonly Point[], from: Point, to: Point, width: number): Stretch[] {
  const way: Point = [to[0] - from[0], to[1] - from[1]];
  const shadows = profile
    .map((corner) => cross([corner[0] - from[0], corner[1] - from[1]], TO_EYE) / cross(way, TO_EYE))
    .filter((t) => t > 0 && t < 1);
  const stops = [0, ...shadows, 1].sort((a, b) => a - b).filter((t, i, all) => i === 0 || t > (all[i - 1] ?? t));
  return stops.slice(1).flatMap((end, index) => {
    const start = stops[index] ?? 0;
    const meets = firstMet(profile, from, way, (start + end) / 2);
    const limit = (t: number): number => (meets ? width / 2 - meets(t) : -Infinity);
    return cutAt({ start, end, startLimit: limit(start), endLimit: limit(end) }, -width / 2);
  });
}

/** How far the way to the eye goes from each place until it meets the edge that it meets first at one of them. */
function firstMet(profile: readonly Point[], from: Point, way: Point, place: number): ((t: number) => number) | null {
  let [least, met]: [number, ((t: number) => number) | null] = [Infinity, null];
  profile.forEach((a, index) => {
    const b = profile[(index + 1) % profile.length] ?? a;
    const along: Point = [b[0] - a[0], b[1] - a[1]];
    const slant = cross(TO_EYE, along);
    if (slant === 0) return;
    const toward = (t: number): Point => [a[0] - from[0] - t * way[0], a[1] - from[1] - t * way[1]];
    const reach = (t: number): number => cross(toward(t), along) / slant;
    const share = cross(toward(place), TO_EYE) / slant;
    if (share < 0 || share > 1 || reach(place) <= START || reach(place) >= least) return;
    [least, met] = [reach(place), reach];
  });
  return met;
}

/** Limits below the far end mean the far end: cut where the limit passes it. */
function cutAt(stretch: Stretch, far: number): Stretch[] {
  const { start, end, startLimit, endLimit } = stretch;
  const [startOver, endOver] = [startLimit > far, endLimit > far];
  if (!startOver && !endOver) return [{ start, end, startLimit: far, endLimit: far }];
  if (startOver && endOver) return [stretch];
  const middle = start + ((end - start) * (far - startLimit)) / (endLimit - startLimit);
  return [
    { start, end: middle, startLimit: Math.max(startLimit, far), endLimit: far },
    { start: middle, end, startLimit: far, endLimit: Math.max(endLimit, far) },
  ];
}

/** Along the near end and back along the limits. */
function loopOf(stretches: readonly Stretch[], near: number, at: (t: number, x: number) => Vec3): Vec3[] {
  const limits = stretches.flatMap(({ start, end, startLimit, endLimit }) => [
    [start, Math.min(startLimit, near)] as const,
    [end, Math.min(endLimit, near)] as const,
  ]);
  const corners = [[0, near] as const, [1, near] as const, ...limits.reverse()];
  return corners
    .filter(([t, x], i) => {
      const [before, previous] = corners[(i + corners.length - 1) % corners.length] ?? [NaN, NaN];
      return t !== before || x !== previous;
    })
    .map(([t, x]) => at(t, x));
}

/** Where the line at one x is in sight, neighbours joined. */
function linesOf(stretches: readonly Stretch[], x: number): (readonly [number, number])[] {
  const lines: [number, number][] = [];
  for (const stretch of stretches) {
    const part = partInSight(stretch, x);
    const last = lines.at(-1);
    if (!part) continue;
    if (last?.[1] === part[0]) last[1] = part[1];
    else lines.push([part[0], part[1]]);
  }
  return lines;
}

function partInSight({ start, end, startLimit, endLimit }: Stretch, x: number): readonly [number, number] | null {
  const [startSeen, endSeen] = [x >= startLimit, x >= endLimit];
  if (startSeen && endSeen) return [start, end];
  if (!startSeen && !endSeen) return null;
  const turn = start + ((end - start) * (x - startLimit)) / (endLimit - startLimit);
  return startSeen ? [start, turn] : [turn, end];
}
