import type { Point } from '$lib/geometry/point.ts';
import { across, area, circle, label, line, spot, turned, upright, type Figure } from '$lib/views/figure/figure.ts';
import { block } from './aimFigures.ts';

const EAR: Point = [60, 330];
const UPPER: Point = [680, 270];
const LOWER: Point = [700, 120];

export const crossover: Figure = {
  says: 'From the side: the upper driver is du from the ear and the lower one dl; the difference of the two paths is Δ.',
  extent: [0, 30, 820, 400],
  shapes: [
    area('cabinet', 'cabinet', block([680, 40], 0, 120, 330)),
    line('upper-path', 'sight', [UPPER, EAR], 'sight'),
    line('lower-path', 'sight', [LOWER, EAR], 'sight'),
    spot('upper', 'axis', UPPER, 'dot'),
    spot('lower', 'axis', LOWER, 'dot'),
    circle('head', 'head', EAR, 26, { pen: 'narrow' }),
    label('u', [400, 325], 'du'),
    label('l', [400, 185], 'dl'),
  ],
  dimensions: [],
};

const SOURCE: Point = [640, 190];
const HEAD: Point = [80, 330];
const BOUNCE: Point = [640 - (560 * 190) / (190 + 330), 0];

export const reflection: Figure = {
  says: 'From the side: the sound that the desk sends back seems to come from the mirror image of the source, as far below the desk as the source is above.',
  extent: [20, -190, 720, 380],
  shapes: [
    line(
      'surface',
      'desk',
      [
        [20, 0],
        [720, 0],
      ],
      'wide',
    ),
    line('direct', 'sight', [SOURCE, HEAD], 'sight'),
    line('bounce', 'reflection', [SOURCE, BOUNCE, HEAD], 'hidden'),
    line('image', 'reflection', [BOUNCE, [640, -190]], 'phantom'),
    spot('source', 'axis', SOURCE, 'dot'),
    spot('mirror', 'reflection', [640, -190], 'ring'),
    circle('head', 'head', HEAD, 26, { pen: 'narrow' }),
    label('d', [360, 285], 'd'),
  ],
  dimensions: [
    upright('hs', [640, 0], SOURCE, 1, 'hs'),
    upright('he', [80, 0], HEAD, -1, 'he'),
    across('r', HEAD, SOURCE, 1, 'r'),
  ],
};

/** How a piston's level falls to both sides of its axis, as a polar curve: 2·J₁(x)/x at ka = 4, by its series. */
const beam = (angle: number): number => {
  const x = 4 * Math.sin(angle);
  let [term, sum] = [1, 1];
  for (let i = 1; i < 12; i++) {
    term *= -(x * x) / (4 * i * (i + 1));
    sum += term;
  }
  return Math.abs(sum);
};
const MOUTH: Point = [700, 200];
const curve = Array.from({ length: 91 }, (_, i): Point => {
  const angle = ((i - 45) * 2 * Math.PI) / 180;
  const reach = 480 * beam(angle);
  return [MOUTH[0] - reach * Math.cos(angle), MOUTH[1] + reach * Math.sin(angle)];
});

export const piston: Figure = {
  says: 'A flat piston of radius R sends most of its sound straight ahead; off its axis by δ the level is less.',
  extent: [180, 20, 820, 400],
  shapes: [
    line('beam', 'reflection', curve, 'narrow'),
    area('piston', 'driver', [
      [700, 120],
      [720, 120],
      [720, 280],
      [700, 280],
    ]),
    line('axis', 'axis', [MOUTH, [190, 200]], 'aim'),
    line('off', 'sight', [MOUTH, [260, 360]], 'sight'),
  ],
  dimensions: [
    upright('R', [710, 200], [710, 280], 1, 'R'),
    turned('δ', MOUTH, Math.atan2(160, -440), Math.PI, 300, 'δ'),
  ],
};
