import { minus, outer, shifted } from '$lib/geometry/plane.ts';
import type { Convex } from './convexPieces.ts';
import type { Point } from '$lib/geometry/point.ts';

/**
 * The no-fit polygon of two convex polygons, by merging their edges in order of direction: the moves of `b` at which it
 * touches or overlaps `a` where it stands. Convex, counter-clockwise, O(n + m).
 */
export function noFit(a: Convex, b: Convex): Convex {
  const first = fromLowest(a);
  const second = fromLowest(b.map(([x, y]): Point => [-x, -y]));
  const merged: Point[] = [];
  for (let i = 0, j = 0; i < first.length || j < second.length;) {
    const [p, q] = [first[i % first.length], second[j % second.length]];
    const [nextP, nextQ] = [first[(i + 1) % first.length], second[(j + 1) % second.length]];
    if (p === undefined || q === undefined || nextP === undefined || nextQ === undefined) break;
    merged.push(shifted(p, q));
    const turn = outer(minus(nextP, p), minus(nextQ, q));
    const bothLeft = i < first.length && j < second.length;
    if (bothLeft ? turn >= 0 : i < first.length) i++;
    if (bothLeft ? turn <= 0 : i >= first.length) j++;
  }
  return merged;
}

/** The same polygon from its lowest corner on, the leftmost of several. */
function fromLowest(polygon: Convex): Convex {
  let start = 0;
  polygon.forEach(([x, y], i) => {
    const [lowX, lowY] = polygon[start] ?? [Infinity, Infinity];
    if (y < lowY || (y === lowY && x < lowX)) start = i;
  });
  return [...polygon.slice(start), ...polygon.slice(0, start)];
}

/**
 * How far right the second shape must move, when it is `rise` mm higher than the first, to be clear of it by `spacing` and
 * stay clear however much further right it goes; −Infinity when it is clear wherever it is. Exact: the right-hand limit
 * of the no-fit polygon grown by a disc of the spacing. Plain numbers throughout: arranging asks this many thousand times.
 */
export function clearRight(noFit: Convex, rise: number, spacing: number): number {
  let limit = -Infinity;
  let before = noFit.at(-1);
  for (const corner of noFit) {
    const off = rise - corner[1];
    if (Math.abs(off) <= spacing) limit = Math.max(limit, corner[0] + Math.sqrt(spacing * spacing - off * off));
    const [dx, dy] = before === undefined ? [0, 0] : [corner[0] - before[0], corner[1] - before[1]];
    if (before !== undefined && dy > 0) {
      const length = Math.hypot(dx, dy);
      const fraction = (rise - before[1] + (spacing * dx) / length) / dy;
      if (fraction >= 0 && fraction <= 1) limit = Math.max(limit, before[0] + (spacing * dy) / length + fraction * dx);
    }
    before = corner;
  }
  return limit;
}
