import type { Point } from '$lib/geometry/point.ts';
import {
  across,
  area,
  circle,
  label,
  line,
  spot,
  turned,
  upright,
  type Figure,
  type Shape,
} from '$lib/views/figure/figure.ts';
import { headAbove } from '$lib/views/figure/person.ts';

/** A box on a corner, turned: points along and square to a direction. */
export const block = ([x, y]: Point, way: number, long: number, high: number): Point[] => {
  const at = (a: number, b: number): Point => [
    x + a * Math.cos(way) - b * Math.sin(way),
    y + a * Math.sin(way) + b * Math.cos(way),
  ];
  return [at(0, 0), at(long, 0), at(long, high), at(0, high)];
};

/** A cabinet from above: the middle of its front at a point, its front facing a direction. */
const cabinetAbove = (id: string, [x, y]: Point, facing: number): Shape => {
  const start: Point = [x + 80 * Math.cos(facing + Math.PI / 2), y + 80 * Math.sin(facing + Math.PI / 2)];
  return area(id, 'cabinet', block(start, facing + Math.PI, 190, 160));
};

const MARK: Point = [430, 520];
const toHead = Math.atan2(-MARK[1], -MARK[0]);

export const toe: Figure = {
  says: 'From above: the right loudspeaker, turned inwards by the toe φ so that its axis meets the head; a and b lead from its mark to the head.',
  extent: [-130, -110, 700, 760],
  shapes: [
    ...headAbove([0, 0]),
    cabinetAbove('cabinet', MARK, toHead),
    line('ahead', 'desk', [MARK, [MARK[0], 60]], 'hidden'),
    line('axis', 'axis', [MARK, [-50, (-50 * MARK[1]) / MARK[0]]], 'aim'),
    spot('mark', 'axis', MARK, 'cross'),
  ],
  dimensions: [
    across('a', [0, 0], [MARK[0], MARK[1]], -1, 'a'),
    upright('b', [0, 0], [MARK[0], MARK[1]], 1, 'b'),
    turned('φ', MARK, toHead, -Math.PI / 2, 260, 'φ'),
  ],
};

const TILT = (14 * Math.PI) / 180;
const FRONT: Point = [640, 60 + 240 * Math.sin(TILT)];
const baffle = (along: number): Point => [FRONT[0] + along * Math.sin(TILT), FRONT[1] + along * Math.cos(TILT)];
const AIMED = baffle(230);
const EAR: Point = [0, AIMED[1] + AIMED[0] * Math.tan(TILT)];
const REAR: Point = [FRONT[0] + 240 * Math.cos(TILT), 60];

export const side: Figure = {
  says: 'From the side: the cabinet tilted by θ on its stand, lifted by l; its axis leaves the aimed point, h up the baffle, and rises at α to the ear, e over the desk.',
  extent: [-60, 0, 960, Math.max(EAR[1], baffle(310)[1]) + 20],
  shapes: [
    area('stand', 'stand', [[FRONT[0], 0], [REAR[0], 0], REAR, FRONT], { pen: 'narrow' }),
    area('cabinet', 'cabinet', block(FRONT, -TILT, 240, 310)),
    line(
      'desk',
      'desk',
      [
        [-60, 0],
        [960, 0],
      ],
      'wide',
    ),
    line('axis', 'axis', [AIMED, [-50, EAR[1] + 50 * Math.tan(TILT)]], 'aim'),
    line('level', 'desk', [AIMED, [AIMED[0] - 330, AIMED[1]]], 'hidden'),
    spot('ear', 'axis', EAR, 'ring'),
    spot('aimed', 'axis', AIMED, 'dot'),
    label('h', [baffle(115)[0] + 26, baffle(115)[1]], 'h'),
  ],
  dimensions: [
    upright('e', [0, 0], EAR, -1, 'e'),
    upright('l', [REAR[0], 0], REAR, 1, 'l'),
    upright('hf', [FRONT[0], 0], FRONT, -1, 'hf', { base: FRONT[0] - 8 }),
    across('r', [0, 0], [FRONT[0], 0], -1, 'r'),
    turned('α', AIMED, Math.PI - TILT, Math.PI, 240, 'α'),
    turned('θ', REAR, Math.PI - TILT, Math.PI, 150, 'θ', 'to'),
  ],
};

const AXIS = (200 * Math.PI) / 180;
const ahead = (from: Point, way: number, by: number): Point => [
  from[0] + by * Math.cos(way),
  from[1] + by * Math.sin(way),
];
const SOURCE: Point = [700, 300];
const NEAREST = ahead(SOURCE, AXIS, 560);
const HEAD = ahead(NEAREST, AXIS - Math.PI / 2, 140);

export const miss: Figure = {
  says: 'The axis passes the head; the miss m is the shortest distance between them, square to the axis.',
  extent: [0, -20, 760, 380],
  shapes: [
    line('axis', 'axis', [SOURCE, ahead(SOURCE, AXIS, 660)], 'aim'),
    line('d', 'sight', [SOURCE, HEAD], 'sight'),
    line('m', 'desk', [NEAREST, HEAD], 'wide'),
    circle('head', 'head', HEAD, 26, { pen: 'narrow' }),
    spot('source', 'axis', SOURCE, 'dot'),
    label('m-word', ahead(ahead(NEAREST, AXIS - Math.PI / 2, 60), AXIS, 34), 'm'),
    label(
      'd-word',
      ahead(ahead(SOURCE, Math.atan2(HEAD[1] - SOURCE[1], HEAD[0] - SOURCE[0]), 380), Math.PI / 2, -30),
      'd',
    ),
  ],
  dimensions: [turned('δ', SOURCE, Math.atan2(HEAD[1] - SOURCE[1], HEAD[0] - SOURCE[0]), AXIS, 260, 'δ')],
};

const LEFT: Point = [-330, 572];
const RIGHT: Point = [330, 572];
const facing = ([x, y]: Point): number => Math.atan2(-y, -x);

export const triangle: Figure = {
  says: 'From above: the two aimed points, B apart, and the head, dL and dR from them; the pair stands γ apart as the head sees it.',
  extent: [-560, -110, 560, 790],
  shapes: [
    ...headAbove([0, 0]),
    cabinetAbove('left', LEFT, facing(LEFT)),
    cabinetAbove('right', RIGHT, facing(RIGHT)),
    line('dl', 'sight', [LEFT, [0, 0], RIGHT], 'sight'),
    label('dL', [-215, 240], 'dL'),
    label('dR', [215, 240], 'dR'),
  ],
  dimensions: [
    across('B', LEFT, RIGHT, -1, 'B', { base: 572 }),
    turned('γ', [0, 0], Math.atan2(RIGHT[1], RIGHT[0]), Math.atan2(LEFT[1], LEFT[0]), 330, 'γ'),
  ],
};

const MOUTH: Point = [700, 120];
const LISTENER: Point = [80, 320];

export const driver: Figure = {
  says: 'A driver and its axis: the head is d away, t along the axis and s beside it, δ off the axis.',
  extent: [0, 0, 800, 380],
  shapes: [
    area('baffle', 'cabinet', block([700, 0], 0, 80, 240)),
    area('cone', 'driver', [
      [700, 70],
      [740, 100],
      [740, 140],
      [700, 170],
    ]),
    line('axis', 'axis', [MOUTH, [40, 120]], 'aim'),
    line('d', 'sight', [MOUTH, LISTENER], 'sight'),
    circle('head', 'head', LISTENER, 26, { pen: 'narrow' }),
    label('d-word', [400, 250], 'd'),
  ],
  dimensions: [
    upright('s', [80, 120], LISTENER, -1, 's'),
    across('t', [80, 120], MOUTH, -1, 't'),
    turned('δ', MOUTH, Math.atan2(LISTENER[1] - MOUTH[1], LISTENER[0] - MOUTH[0]), Math.PI, 300, 'δ'),
  ],
};
