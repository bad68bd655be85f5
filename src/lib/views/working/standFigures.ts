import type { Point } from '$lib/geometry/point.ts';
import {
  across,
  area,
  circle,
  label,
  line,
  rect,
  spot,
  turned,
  upright,
  type Figure,
} from '$lib/views/figure/figure.ts';
import { block } from './aimFigures.ts';

const SLICES = 9;
const SLICE = 54;

export const stack: Figure = {
  says: 'From behind: n slices, each t thick, side by side make the finished width W.',
  extent: [0, 0, SLICES * SLICE, 230],
  shapes: Array.from({ length: SLICES }, (_, i) =>
    rect(`slice-${i}`, 'stand', [i * SLICE, 0, (i + 1) * SLICE, 230], { pen: 'narrow' }),
  ),
  dimensions: [
    across('W', [0, 0], [SLICES * SLICE, 0], -1, 'W'),
    across('t', [0, 230], [SLICE, 230], 1, 't', { beside: 'to' }),
  ],
};

const TILT = (16 * Math.PI) / 180;
const wedge: readonly Point[] = [
  [0, 0],
  [480, 0],
  [480, 60],
  [0, 60 + 480 * Math.tan(TILT)],
];
const [, , LOW = [0, 0], HIGH = [0, 0]] = wedge;

export const profile: Figure = {
  says: 'The stand from the side: Hf high at its front and Hr at its rear, its top sloping by θ.',
  extent: [0, 0, 480, HIGH[1]],
  shapes: [area('stand', 'stand', wedge), line('level', 'desk', [LOW, [260, 60]], 'hidden')],
  dimensions: [
    upright('Hf', [0, 0], HIGH, -1, 'Hf'),
    upright('Hr', [480, 0], LOW, 1, 'Hr'),
    turned('θ', LOW, Math.PI - TILT, Math.PI, 190, 'θ'),
  ],
};

export const rod: Figure = {
  says: 'A rod hole in a slice, dh wide; its middle lies a from the nearest edge, which leaves e of wood.',
  extent: [0, 0, 480, 240],
  shapes: [
    area('slice', 'stand', [
      [0, 0],
      [480, 0],
      [480, 130],
      [0, 240],
    ]),
    circle('hole', 'cabinet', [250, 70], 34),
    spot('middle', 'axis', [250, 70], 'cross'),
  ],
  dimensions: [
    upright('a', [250, 0], [250, 70], -1, 'a', { base: 190 }),
    across('dh', [216, 70], [284, 70], 1, 'dh', { base: 120 }),
    upright('e', [250, 0], [250, 36], 1, 'e', { base: 300 }),
  ],
};

export const tip: Figure = {
  says: 'The centre of mass of cabinet and stand is z over the desk and b inside the edge; tilted by β it stands over the edge, and the loudspeaker tips.',
  extent: [0, 0, 480, 430],
  shapes: [
    rect('stand', 'stand', [100, 0, 380, 90], { pen: 'narrow' }),
    rect('cabinet', 'cabinet', [130, 90, 350, 410]),
    line(
      'desk',
      'desk',
      [
        [0, 0],
        [480, 0],
      ],
      'wide',
    ),
    line(
      'plumb',
      'axis',
      [
        [240, 0],
        [240, 220],
      ],
      'centre',
    ),
    line(
      'to-edge',
      'sight',
      [
        [100, 0],
        [240, 220],
      ],
      'sight',
    ),
    spot('centre', 'axis', [240, 220], 'cross'),
    label('F', [40, 400], 'F →'),
  ],
  dimensions: [
    across('b', [100, 0], [240, 0], -1, 'b'),
    upright('z', [240, 0], [240, 220], 1, 'z'),
    turned('β', [240, 220], Math.atan2(-220, -140), -Math.PI / 2, 130, 'β'),
  ],
};

export const slide: Figure = {
  says: 'A cabinet on its slope: it stays while the slope θ is under the angle ε that friction holds.',
  extent: [0, 0, 480, 330],
  shapes: [
    area('stand', 'stand', wedge),
    area('cabinet', 'cabinet', block([40, HIGH[1] - 40 * Math.tan(TILT)], -TILT, 300, 130)),
    line('level', 'desk', [LOW, [200, 60]], 'hidden'),
  ],
  dimensions: [turned('θ', LOW, Math.PI - TILT, Math.PI, 210, 'θ')],
};
