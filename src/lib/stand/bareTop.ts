import type { Point } from '$lib/geometry/point.ts';
import type { Section } from './standSurface.ts';
import { SLACK } from './slack.ts';

/** Ends of the longest stretch of a section's top that no stop stands on: the rear one, then the front one. */
export function bareTop({ slice, core }: Section): readonly [Point, Point] {
  const [, , topRear = [0, 0], topFront = [0, 0]] = core;
  const along = (topRear[1] - topFront[1]) / (topRear[0] - topFront[0]);
  const isTop = ([u, z]: Point): boolean => Math.abs(z - topFront[1] - along * (u - topFront[0])) <= SLACK;
  let best: readonly [Point, Point] = [topRear, topRear];
  for (const [i, rear] of slice.entries()) {
    // Counter-clockwise: the top runs from the rear to the front.
    const front = slice[(i + 1) % slice.length] ?? rear;
    if (isTop(rear) && isTop(front) && rear[0] - front[0] > best[0][0] - best[1][0]) best = [rear, front];
  }
  return best;
}
