import type { Point } from '$lib/geometry/point.ts';
import type { SideName } from '$lib/project/project.ts';

/**
 * The corners of the base on the desk, desk frame, counter-clockwise from above: the front corner on the listener's
 * right first.
 *
 * @param toe Radians; positive turns the front towards the middle.
 * @param base u of the base's front and rear edge.
 * @param width Finished width, mm.
 */
export function footprintOf(
  mark: { readonly x: number; readonly y: number },
  toe: number,
  side: SideName,
  base: readonly [number, number],
  width: number,
): readonly Point[] {
  const mirror = side === 'right' ? 1 : -1;
  const rearwards: Point = [mirror * Math.sin(toe), Math.cos(toe)];
  // A quarter turn clockwise from rearwards: to the listener's right when the toe is 0, on either side.
  const rightwards: Point = [rearwards[1], -rearwards[0]];
  const corner = (u: number, across: number): Point => [
    mark.x + u * rearwards[0] + across * rightwards[0],
    mark.y + u * rearwards[1] + across * rightwards[1],
  ];
  const [front, rear] = base;
  const half = width / 2;
  return [corner(front, half), corner(rear, half), corner(rear, -half), corner(front, -half)];
}
