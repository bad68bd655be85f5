import type { Point } from '$lib/geometry/point.ts';
import { area, circle, line, rect, ring, type Shape } from '$lib/views/figure/figure.ts';

/** Things that the drawings of the help share. The desk's top is at 0; the listener is at the left. */

export const desk = (from: number, to: number): Shape => rect('desk', 'desk', [from, -26, to, 0]);

const turnedBy =
  (angle: number, [x, y]: Point) =>
  ([u, v]: Point): Point => [
    x + u * Math.cos(angle) - v * Math.sin(angle),
    y + u * Math.sin(angle) + v * Math.cos(angle),
  ];

/** A cabinet from the side: its front bottom edge at `foot`, its front towards the left, tilted up by an angle. */
export function cabinetFromSide(
  foot: Point,
  tilt: number,
  [depth, height]: Point = [200, 270],
  rake = 0,
): readonly Shape[] {
  const at = turnedBy(-tilt, foot);
  const lean = height * Math.tan(rake);
  return [
    area('cabinet', 'cabinet', [at([0, 0]), at([depth, 0]), at([depth, height]), at([lean, height])]),
    area('tweeter', 'driver', [
      at([0.68 * lean, 0.68 * height]),
      at([10 + 0.68 * lean, 0.7 * height]),
      at([10 + 0.84 * lean, 0.82 * height]),
      at([0.84 * lean, 0.84 * height]),
    ]),
    area('woofer', 'driver', [
      at([0.12 * lean, 0.12 * height]),
      at([34 + 0.2 * lean, 0.22 * height]),
      at([34 + 0.4 * lean, 0.42 * height]),
      at([0.52 * lean, 0.52 * height]),
    ]),
  ];
}

/** A point of a cabinet drawn so: `depth` back from its front, `height` up along it. */
export const onCabinet = (foot: Point, tilt: number, at: Point): Point => turnedBy(-tilt, foot)(at);

/** A wedge under it: from the front edge's height over the desk down to the rear. */
export const wedge = (from: Point, to: Point): Shape => area('wedge', 'stand', [[from[0], 0], [to[0], 0], to, from]);

export const head = ([x, y]: Point): readonly Shape[] => [
  area('nose', 'head', [
    [x + 50, y + 16],
    [x + 78, y - 8],
    [x + 48, y - 20],
  ]),
  circle('head', 'head', [x, y], 55),
  ring('ear', [x, y]),
];

export const axisLine = (from: Point, to: Point): Shape => line('axis', 'axis', [from, to], 'aim');

/** A cabinet from above: the middle of its front edge at `mark`, its front downwards, turned by an angle. */
export function cabinetFromAbove(id: string, mark: Point, turn: number, [width, depth]: Point = [170, 200]): Shape {
  const at = turnedBy(turn, mark);
  return area(id, 'cabinet', [
    at([-width / 2, 0]),
    at([width / 2, 0]),
    at([width / 2, depth]),
    at([-width / 2, depth]),
  ]);
}

/** A wave along the first axis: so many periods of a length, begun so far into the first. */
export function wave(
  id: string,
  subject: 'sight' | 'axis' | 'reflection',
  [x, y]: Point,
  size: Point,
  periods: number,
  begun: number,
): Shape {
  const [length, height] = size;
  const PIECES = 24;
  const points = Array.from({ length: PIECES * periods + 1 }, (_, index): Point => {
    const share = index / (PIECES * periods);
    return [x + length * share, y + height * Math.sin(2 * Math.PI * (periods * share + begun))];
  });
  return line(id, subject, points, 'wide');
}
