import type { Point } from '$lib/geometry/point.ts';
import { across, area, circle, type Figure, label, line, rect, type Shape, upright } from '$lib/views/figure/figure.ts';
import { desk } from './stage.ts';

/** The drawings of the stand and of its cutting. */

const LEFT = 60;
const RIGHT = 400;
const FRONT = 120;
const REAR = 40;
const wedge = area('wedge', 'stand', [
  [LEFT, 0],
  [RIGHT, 0],
  [RIGHT, REAR],
  [LEFT, FRONT],
]);
const top = (x: number): number => FRONT + ((REAR - FRONT) * (x - LEFT)) / (RIGHT - LEFT);

export const profileFigure: Figure = {
  extent: [20, -26, 440, 190],
  says: 'A wedge from the side; a piece of it reaches beyond the cabinet that stands on it: the margin.',
  shapes: [
    desk(20, 440),
    wedge,
    area('cabinet', 'cabinet', [
      [LEFT + 60, top(LEFT + 60)],
      [RIGHT - 20, top(RIGHT - 20)],
      [RIGHT - 3, top(RIGHT - 20) + 70],
      [LEFT + 77, top(LEFT + 60) + 70],
    ]),
  ],
  dimensions: [across('margin', [LEFT, FRONT], [LEFT + 60, top(LEFT + 60)], 1, 'margin', { beside: 'to' })],
};

export const endsFigure: Figure = {
  extent: [0, -10, 480, 170],
  says: 'Two wedges from the side: the ends of one are plumb, those of the other square to its slope.',
  shapes: [
    area('plumb', 'stand', [
      [0, 30],
      [200, 30],
      [200, 60],
      [0, 130],
    ]),
    label('plumb-name', [100, 2], 'plumb'),
    area('square', 'stand', [
      [222, 30],
      [480, 30],
      [480, 62],
      [262, 138],
    ]),
    label('square-name', [360, 2], 'square'),
  ],
  dimensions: [],
};

export const sliceFigure: Figure = {
  extent: [0, 0, 460, 230],
  says: 'A stack of equal slices glued side by side; one of them stands apart.',
  shapes: [
    ...Array.from({ length: 7 }, (_, index) => slice(`slice-${index}`, [30 + index * 22, 20 + index * 7])),
    slice('apart', [270, 96]),
  ],
  dimensions: [],
};

function slice(id: string, [x, y]: Point): Shape {
  return area(id, 'stand', [
    [x, y],
    [x + 150, y - 26 + 20],
    [x + 150, y + 34],
    [x, y + 96],
  ]);
}

export const minimumEdgeFigure: Figure = {
  extent: [LEFT, 0, RIGHT, 130],
  says: 'A wedge from the side: the height of its low end must not fall under the thinnest edge.',
  shapes: [wedge],
  dimensions: [upright('edge', [RIGHT, 0], [RIGHT, REAR], 1, 'edge', { beside: 'to' })],
};

export const stopFigure: Figure = {
  extent: [20, -26, 470, 190],
  says: 'A lip at the low end of the slope, against which the cabinet rests.',
  shapes: [
    desk(20, 470),
    wedge,
    area('stop', 'stand', [
      [RIGHT - 30, top(RIGHT - 30)],
      [RIGHT, REAR],
      [RIGHT + 12, REAR + 50],
      [RIGHT - 18, top(RIGHT - 30) + 50],
    ]),
    area('cabinet', 'cabinet', [
      [LEFT + 40, top(LEFT + 40)],
      [RIGHT - 32, top(RIGHT - 32)],
      [RIGHT - 15, top(RIGHT - 32) + 75],
      [LEFT + 57, top(LEFT + 40) + 75],
    ]),
  ],
  dimensions: [],
};

export const rodsFigure: Figure = {
  extent: [LEFT, 0, RIGHT, 130],
  says: 'A slice with two holes: rods through them line all slices up while they are glued.',
  shapes: [wedge, circle('hole', 'desk', [130, 50], 18), circle('other', 'desk', [300, 30], 18)],
  dimensions: [upright('wood', [300, 0], [300, 12], 1, 'wood', { base: 330, beside: 'from' })],
};

export const clearanceFigure: Figure = {
  extent: [0, 0, 300, 220],
  says: 'A rod in its hole: the hole is wider by the clearance, half of it on each side.',
  shapes: [
    rect('wood', 'stand', [0, 0, 300, 220]),
    circle('hole', 'desk', [150, 110], 92),
    circle('rod', 'cabinet', [150, 110], 74),
  ],
  dimensions: [across('rod', [76, 110], [224, 110], 0, 'rod'), across('hole', [58, 110], [242, 110], 1, 'hole')],
};

export const padFigure: Figure = {
  extent: [20, -26, 440, 190],
  says: 'A wedge from the side with feet below, a pad on its slope and the cabinet on the pad.',
  shapes: [
    desk(20, 440),
    rect('foot', 'driver', [90, 0, 130, 22]),
    rect('other-foot', 'driver', [330, 0, 370, 22]),
    area('body', 'stand', [
      [LEFT, 22],
      [RIGHT, 22],
      [RIGHT, 52],
      [LEFT, 112],
    ]),
    area('pad', 'driver', [
      [LEFT + 3, 112],
      [RIGHT, 52],
      [RIGHT + 3, 68],
      [LEFT + 6, 128],
    ]),
    label('pad-name', [235, 150], 'pad'),
    label('feet-name', [230, 2], 'feet'),
  ],
  dimensions: [],
};

export const veneerFigure: Figure = {
  extent: [LEFT, 0, RIGHT, 150],
  says: 'The end of a stand: the wood is cut smaller so that it comes to its size with the veneer on.',
  shapes: [
    area('skin', 'cabinet', [
      [LEFT, 0],
      [RIGHT, 0],
      [RIGHT, 130],
      [LEFT, 130],
    ]),
    rect('wood', 'stand', [LEFT + 16, 0, RIGHT - 16, 114]),
    label('wood-name', [230, 57], 'wood'),
  ],
  dimensions: [across('veneer', [RIGHT - 16, 130], [RIGHT, 130], 1, 'veneer', { beside: 'from' })],
};

export const glueFigure: Figure = {
  extent: [0, 0, 330, 150],
  says: 'Slices from the front: every joint adds the thickness of its glue to the width.',
  shapes: [
    rect('one', 'stand', [30, 0, 110, 130]),
    rect('line', 'driver', [110, 0, 122, 130]),
    rect('two', 'stand', [122, 0, 202, 130]),
    rect('line-two', 'driver', [202, 0, 214, 130]),
    rect('three', 'stand', [214, 0, 294, 130]),
  ],
  dimensions: [across('glue', [110, 130], [122, 130], 1, 'glue line', { beside: 'to' })],
};

export const kerfFigure: Figure = {
  extent: [0, 0, 420, 150],
  says: 'A board cut through: the beam takes away a slot as wide as the kerf, half of it on each side of the line.',
  shapes: [
    rect('left', 'stand', [0, 0, 190, 110]),
    rect('right', 'stand', [230, 0, 420, 110]),
    line(
      'beam',
      'axis',
      [
        [210, -10],
        [210, 150],
      ],
      'centre',
    ),
    label('part', [95, 55], 'part'),
    label('rest', [325, 55], 'rest'),
  ],
  dimensions: [across('kerf', [190, 110], [230, 110], 1, 'kerf', { beside: 'to' })],
};

export const taperFigure: Figure = {
  extent: [0, 0, 420, 150],
  says: 'A board cut through: the slot is wider at the top than below; taper is the angle of the cut edge with plumb.',
  shapes: [
    area('left', 'stand', [
      [0, 0],
      [196, 0],
      [176, 110],
      [0, 110],
    ]),
    area('right', 'stand', [
      [224, 0],
      [420, 0],
      [420, 110],
      [244, 110],
    ]),
    line(
      'plumb',
      'axis',
      [
        [224, 0],
        [224, 140],
      ],
      'centre',
    ),
  ],
  dimensions: [
    {
      line: {
        kind: 'angle',
        id: 'taper',
        subject: 'axis',
        corner: [224, 0],
        from: Math.atan2(110, 20),
        to: Math.PI / 2,
        radius: 105,
        legs: 'none',
        beyond: 'from',
        value: 0,
        name: 'taper',
      },
      text: 'taper',
    },
  ],
};

export const spacingFigure: Figure = {
  extent: [0, 0, 420, 190],
  says: 'Two parts on a sheet: the gap between them, and the margin to the sheet’s edge.',
  shapes: [
    rect('sheet', 'stand', [0, 0, 420, 190]),
    rect('one', 'cabinet', [40, 40, 190, 150]),
    rect('two', 'cabinet', [220, 40, 380, 150]),
  ],
  dimensions: [
    across('gap', [190, 150], [220, 150], 1, 'between', { beside: 'to' }),
    across('margin', [0, 150], [40, 150], -1, 'margin', { beside: 'to' }),
  ],
};
