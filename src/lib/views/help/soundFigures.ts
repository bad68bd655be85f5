import type { Point } from '$lib/geometry/point.ts';
import {
  across,
  area,
  circle,
  dot,
  type Figure,
  label,
  line,
  rect,
  ring,
  type Shape,
  upright,
} from '$lib/views/figure/figure.ts';
import { axisLine, desk, head, wave } from './stage.ts';

/** The drawings of what is heard. */

export const acousticDepthFigure: Figure = {
  extent: [0, 0, 420, 260],
  says: 'A cone driver cut through: its sound starts at a point behind the face of the baffle.',
  shapes: [
    rect('baffle-below', 'cabinet', [180, 0, 215, 50]),
    rect('baffle-above', 'cabinet', [180, 210, 215, 260]),
    area('cone', 'driver', [
      [180, 210],
      [290, 150],
      [290, 110],
      [180, 50],
      [192, 50],
      [302, 106],
      [302, 154],
      [192, 210],
    ]),
    rect('magnet', 'driver', [302, 95, 350, 165]),
    axisLine([276, 130], [0, 130]),
    dot('source', [276, 130]),
  ],
  dimensions: [across('depth', [180, 260], [276, 130], 1, 'depth', { beside: 'to' })],
};

/** Two drivers from the front: a dome in its flange, and a cone in its frame. */
export const radiatingFigure: Figure = {
  extent: [0, 0, 420, 230],
  says: 'A tweeter and a woofer from the front: each has a rim, and within it the dome or the cone that radiates.',
  shapes: [
    circle('flange', 'driver', [110, 110], 70),
    circle('dome', 'driver', [110, 110], 18, { pen: 'wide' }),
    circle('frame', 'driver', [310, 110], 100),
    circle('cone', 'driver', [310, 110], 78, { pen: 'wide' }),
    circle('cap', 'driver', [310, 110], 24, { pen: 'narrow' }),
  ],
  dimensions: [
    upright('rim', [110, 40], [110, 180], -1, 'rim', { base: 40 }),
    upright('radiating', [310, 32], [310, 188], 1, 'radiating', { base: 410 }),
  ],
};

/** Levels over frequency: what goes to the lower driver falls where what goes to the upper one rises. */
export const crossoverFigure: Figure = {
  extent: [0, -10, 420, 230],
  says: 'Level over frequency: the lower driver fades out and the upper one fades in; they are equally loud at the crossover.',
  shapes: [
    line(
      'ground',
      'desk',
      [
        [0, 0],
        [420, 0],
      ],
      'wide',
    ),
    line(
      'upright',
      'desk',
      [
        [0, 0],
        [0, 230],
      ],
      'wide',
    ),
    line('low', 'sight', branch(-1), 'wide'),
    line('high', 'axis', branch(1), 'wide'),
    line(
      'at',
      'desk',
      [
        [210, 0],
        [210, 200],
      ],
      'centre',
    ),
    label('low-name', [70, 205], 'lower driver'),
    label('high-name', [350, 205], 'upper driver'),
  ],
  dimensions: [across('frequency', [0, 0], [210, 0], -1, 'frequency')],
};

function branch(side: 1 | -1): readonly Point[] {
  return Array.from({ length: 43 }, (_, index): Point => {
    const x = index * 10;
    return [x, 180 / (1 + Math.exp((-side * (x - 210)) / 34))];
  });
}

export const meetingFigure: Figure = {
  extent: [0, 0, 460, 250],
  says: 'Two pairs of waves: in phase, both crests come together; in quadrature, one lags by a quarter of a period.',
  shapes: [
    label('first', [0, 240], 'in phase', 'start'),
    wave('one', 'axis', [0, 185], [460, 32], 3, 0),
    wave('two', 'sight', [0, 185], [460, 22], 3, 0),
    label('second', [0, 112], 'in quadrature (90°)', 'start'),
    wave('three', 'axis', [0, 48], [460, 32], 3, 0),
    wave('four', 'sight', [0, 48], [460, 32], 3, -0.25),
  ],
  dimensions: [],
};

export const phaseFigure: Figure = {
  extent: [0, 0, 460, 240],
  says: 'Two drivers and a head: the way from the lower driver is longer, so its wave arrives later by the phase.',
  shapes: [
    rect('front', 'cabinet', [400, 20, 450, 240]),
    circle('tweeter', 'driver', [400, 195], 14, { pen: 'narrow' }),
    circle('woofer', 'driver', [400, 80], 34, { pen: 'narrow' }),
    ...head([70, 180]),
    line(
      'short',
      'axis',
      [
        [400, 195],
        [70, 180],
      ],
      'narrow',
    ),
    line(
      'long',
      'sight',
      [
        [400, 80],
        [70, 180],
      ],
      'narrow',
    ),
    line(
      'further',
      'reflection',
      [
        [400, 80],
        [388.5, 83.5],
      ],
      'wide',
    ),
    label('says', [240, 65], 'further', 'middle'),
  ],
  dimensions: [],
};

const bounce: readonly Shape[] = [
  desk(0, 460),
  ...head([60, 170]),
  rect('box', 'cabinet', [400, 20, 460, 210]),
  line(
    'direct',
    'axis',
    [
      [400, 150],
      [60, 170],
    ],
    'aim',
  ),
  line(
    'bounced',
    'reflection',
    [
      [400, 150],
      [240.6, 0],
      [60, 170],
    ],
    'hidden',
  ),
  ring('place', [240.6, 0]),
];

export const reflectionFigure: Figure = {
  extent: [0, -26, 460, 240],
  says: 'Sound reaches the head straight, and once more by way of the desk: a longer way.',
  shapes: bounce,
  dimensions: [],
};

export const notchFigure: Figure = {
  extent: [0, -10, 440, 230],
  says: 'Level over frequency with dips at even distances: at the first, the longer way is half a wave longer.',
  shapes: [
    line(
      'ground',
      'desk',
      [
        [0, 0],
        [440, 0],
      ],
      'wide',
    ),
    line(
      'upright',
      'desk',
      [
        [0, 0],
        [0, 230],
      ],
      'wide',
    ),
    line('comb', 'axis', comb(), 'wide'),
    ring('first', [80, 45]),
  ],
  dimensions: [across('notch', [0, 0], [80, 45], -1, 'first notch', { beside: 'to' })],
};

/** Direct sound and one bounce of nearly its strength, summed. */
function comb(): readonly Point[] {
  return Array.from({ length: 221 }, (_, index): Point => {
    const turn = (Math.PI * index * 2) / 80;
    return [index * 2, 100 * Math.hypot(1 + 0.6 * Math.cos(turn), 0.6 * Math.sin(turn))];
  });
}

export const frictionFigure: Figure = {
  extent: [0, 0, 420, 230],
  says: 'A block on a slope that is just about to slip: rise over run of that slope is the friction.',
  shapes: [
    area('slope', 'stand', [
      [0, 0],
      [400, 0],
      [400, 130],
    ]),
    area('block', 'cabinet', [
      [170, 55.25],
      [270, 87.75],
      [243, 171],
      [143, 138.5],
    ]),
  ],
  dimensions: [
    across('run', [0, 0], [400, 0], -1, 'run'),
    upright('rise', [400, 0], [400, 130], 1, 'rise', { base: 395 }),
  ],
};
