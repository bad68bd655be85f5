import type { Point } from '$lib/geometry/point.ts';
import {
  across,
  circle,
  cross,
  dot,
  type Figure,
  label,
  line,
  rect,
  ring,
  turned,
  upright,
} from '$lib/views/figure/figure.ts';
import { axisLine, cabinetFromAbove, cabinetFromSide, desk, head, onCabinet, wedge } from './stage.ts';

/** The drawings of what is aimed, and where things stand. */

const TILT = Math.PI / 12;
const FOOT: Point = [330, 78];
const REAR: Point = onCabinet(FOOT, TILT, [200, 0]);
const aimed = onCabinet(FOOT, TILT, [0, 205]);

/** Tilted on its wedge, its axis rising to the listener. */
const tilted = [desk(60, 640), wedge(FOOT, REAR), ...cabinetFromSide(FOOT, TILT)];

export const toeFigure: Figure = {
  extent: [-60, -150, 420, 330],
  says: 'A cabinet from above, turned about its mark towards the middle.',
  shapes: [
    line(
      'plumb',
      'desk',
      [
        [230, -150],
        [230, 330],
      ],
      'centre',
    ),
    line(
      'middle',
      'desk',
      [
        [0, -150],
        [0, 330],
      ],
      'centre',
    ),
    cabinetFromAbove('cabinet', [230, 60], -Math.PI / 6),
    axisLine([230, 60], [230 - 220 * Math.tan(Math.PI / 6), -160]),
    cross('mark', [230, 60]),
    label('middle-name', [-8, 290], 'middle', 'end'),
  ],
  dimensions: [turned('toe', [230, 60], -Math.PI / 2 - Math.PI / 6, -Math.PI / 2, 150, 'toe')],
};

export const tiltFigure: Figure = {
  extent: [60, -26, 640, 380],
  says: 'A cabinet from the side on its wedge: the tilt is the angle of its bottom with the desk.',
  shapes: [...tilted, axisLine(aimed, [60, aimed[1] + (aimed[0] - 60) * Math.tan(TILT)])],
  dimensions: [turned('tilt', [REAR[0] + REAR[1] / Math.tan(TILT), 0], Math.PI - TILT, Math.PI, 210, 'tilt', 'both')],
};

export const liftFigure: Figure = {
  extent: [60, -26, 640, 380],
  says: 'A cabinet from the side on its wedge: the lift is the height of its lowest edge over the desk.',
  shapes: tilted,
  dimensions: [upright('lift', [REAR[0], 0], REAR, 1, 'lift', { base: 545, beside: 'to' })],
};

export const rakeFigure: Figure = {
  extent: [0, -26, 330, 300],
  says: 'A cabinet from the side whose front leans back from square to its bottom: that angle is the rake.',
  shapes: [
    desk(0, 330),
    ...cabinetFromSide([70, 0], 0, [220, 280], 0.2),
    line(
      'plumb',
      'cabinet',
      [
        [70, 0],
        [70, 310],
      ],
      'centre',
    ),
  ],
  dimensions: [turned('rake', [70, 0], Math.PI / 2 - 0.2, Math.PI / 2, 210, 'rake')],
};

export const markFigure: Figure = {
  extent: [-40, 0, 420, 330],
  says: 'A desk corner from above: the mark lies under the middle of the cabinet’s front edge; its two distances run from the desk’s middle and front edge.',
  shapes: [
    rect('top', 'desk', [-40, 0, 420, 330]),
    line(
      'middle',
      'desk',
      [
        [0, -20],
        [0, 350],
      ],
      'centre',
    ),
    cabinetFromAbove('cabinet', [240, 120], -0.5, [150, 170]),
    cross('mark', [240, 120]),
    label('name', [205, 85], 'mark', 'end'),
  ],
  dimensions: [
    across('sideways', [0, 120], [240, 120], 1, 'sideways'),
    upright('from-edge', [240, 0], [240, 120], 1, 'from edge'),
  ],
};

const missEnd: Point = [60, aimed[1] + (aimed[0] - 60) * Math.tan(TILT)];

export const axisFigure: Figure = {
  extent: [40, -26, 640, 420],
  says: 'A cabinet from the side: the axis leaves the aimed point square to the front and rises to the listener.',
  shapes: [
    ...tilted,
    ...head([110, missEnd[1] - 14]),
    axisLine(aimed, missEnd),
    dot('point', aimed),
    label('name', [225, aimed[1] + 85], 'axis'),
  ],
  dimensions: [],
};

export const pointFigure: Figure = {
  extent: [0, 0, 420, 320],
  says: 'The front of a cabinet: the aimed point is the centre of a driver, or a point between two.',
  shapes: [
    rect('front', 'cabinet', [120, 0, 310, 320]),
    circle('tweeter', 'driver', [215, 240], 32),
    circle('woofer', 'driver', [215, 100], 68),
    line(
      'between',
      'axis',
      [
        [215, 100],
        [215, 240],
      ],
      'narrow',
    ),
    dot('upper', [215, 240]),
    ring('middle', [215, 170]),
    dot('lower', [215, 100]),
    label('one', [320, 240], 'fraction 0', 'start'),
    label('half', [320, 170], '0.5', 'start'),
    label('two', [320, 100], '1', 'start'),
  ],
  dimensions: [],
};

export const missFigure: Figure = {
  extent: [0, 0, 460, 260],
  says: 'The axis passes the middle of the head at a distance: the miss, measured square to the axis.',
  shapes: [...head([110, 110]), axisLine([460, 60], [0, 220]), dot('nearest', [130, 175])],
  dimensions: [
    {
      line: {
        kind: 'dimension',
        id: 'miss',
        subject: 'axis',
        run: 'aligned',
        from: [110, 110],
        to: [130, 175],
        row: 0,
        value: 0,
        name: 'miss',
      },
      text: 'miss',
    },
  ],
};

export const triangleFigure: Figure = {
  extent: [-260, -250, 260, 190],
  says: 'Both cabinets and the head from above: the three make a triangle whose angle is measured at the head.',
  shapes: [
    line(
      'triangle',
      'triangle',
      [
        [0, -190],
        [-200, 40],
        [200, 40],
        [0, -190],
      ],
      'sight',
    ),
    cabinetFromAbove('left', [-200, 40], 0.6, [120, 130]),
    cabinetFromAbove('right', [200, 40], -0.6, [120, 130]),
    ...head([0, -190]),
  ],
  dimensions: [
    turned('angle', [0, -190], Math.PI / 2 - Math.atan2(200, 230), Math.PI / 2 + Math.atan2(200, 230), 130, 'angle'),
  ],
};

export const setbackFigure: Figure = {
  extent: [0, -60, 460, 240],
  says: 'A head before a desk from the side: the setback runs from the desk’s front edge back to the ear.',
  shapes: [desk(250, 460), ...head([90, 120])],
  dimensions: [across('setback', [90, 120], [250, 0], 1, 'setback')],
};

export const mirroredFigure: Figure = {
  extent: [-230, 0, 230, 240],
  says: 'Two cabinets from the front, the drivers of one mirroring those of the other about the middle.',
  shapes: [
    line(
      'middle',
      'desk',
      [
        [0, -10],
        [0, 250],
      ],
      'centre',
    ),
    rect('left', 'cabinet', [-210, 0, -70, 230]),
    circle('left-tweeter', 'driver', [-115, 180], 22),
    circle('left-woofer', 'driver', [-140, 80], 52),
    rect('right', 'cabinet', [70, 0, 210, 230]),
    circle('right-tweeter', 'driver', [115, 180], 22),
    circle('right-woofer', 'driver', [140, 80], 52),
  ],
  dimensions: [],
};

export const balanceFigure: Figure = {
  extent: [0, -60, 340, 290],
  says: 'A cabinet from the side balanced on a rod: its balance point is plumb over the rod.',
  shapes: [
    ...cabinetFromSide([60, 0], 0, [220, 280]),
    circle('rod', 'stand', [150, -18], 18),
    line(
      'plumb',
      'axis',
      [
        [150, 0],
        [150, 290],
      ],
      'centre',
    ),
    dot('balance', [150, 135]),
  ],
  dimensions: [across('from-front', [60, 0], [150, 0], -1, 'from the front', { beside: 'to' })],
};
