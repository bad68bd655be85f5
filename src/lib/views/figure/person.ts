import type { Point } from '$lib/geometry/point.ts';
import { area, circle, limb, line, rect, ring, type Shape } from './figure.ts';

/** Where the ear of the sitter is, from the floor under it. */
export const EAR: Point = [0, 1180];

/**
 * Somebody on a chair, from the side, looking to the right: a jointed figure as stands on a drawing table. The ear is
 * over `x`, the floor at 0.
 */
export function sitter(x: number): readonly Shape[] {
  const at = ([dx, dy]: Point): Point => [x + dx, dy];
  return [
    rect('chair-back', 'desk', [x - 235, 560, x - 195, 1000]),
    rect('chair-seat', 'desk', [x - 235, 430, x + 190, 480]),
    rect('chair-stem', 'desk', [x - 30, 60, x, 430]),
    limb('chair-foot', 'desk', at([-200, 35]), at([170, 35]), 30),
    limb('shin', 'head', at([360, 520]), at([340, 90]), 55),
    limb('foot', 'head', at([335, 45]), at([460, 40]), 38),
    limb('thigh', 'head', at([-90, 560]), at([370, 555]), 78),
    limb('torso', 'head', at([-100, 620]), at([-50, 930]), 105),
    limb('upper-arm', 'head', at([-40, 920]), at([20, 690]), 48),
    limb('forearm', 'head', at([20, 690]), at([270, 730]), 40),
    limb('neck', 'head', at([-25, 1020]), at([-5, 1100]), 45),
    circle('skull', 'head', at([10, 1190]), 110),
    area('nose', 'head', [at([112, 1215]), at([150, 1165]), at([110, 1150])], { pen: 'narrow' }),
    ring('ear', at(EAR)),
  ];
}

/** The head from above, looking up the picture, its ears at both sides. */
export const headAbove = ([x, y]: Point): readonly Shape[] => [
  area('nose-above', 'head', [
    [x - 22, y + 90],
    [x, y + 128],
    [x + 22, y + 90],
  ]),
  circle('head-above', 'head', [x, y], 95),
  ring('left-ear', [x - 95, y]),
  ring('right-ear', [x + 95, y]),
];

/** The floor from one place to another. */
export const floor = (from: number, to: number): readonly Shape[] => [
  rect('floor', 'wall', [from, -45, to, 0], { hatched: true, filled: false, pen: 'narrow' }),
  line(
    'floor-line',
    'wall',
    [
      [from, 0],
      [to, 0],
    ],
    'wide',
  ),
];
