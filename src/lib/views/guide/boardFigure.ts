import { across, area, type Figure, label, rect, upright } from '$lib/views/figure/figure.ts';
import type { GuideNumbers } from './numbers.ts';

/** The board's edge between the jaws of a caliper, and the sheet that the machine takes. */
export function boardFigure({ project: { stock }, layout: { stand }, mm }: GuideNumbers): Figure {
  const board = stock.find(({ name }) => name === stand.stock) ?? stock[0];
  return {
    extent: [0, 0, 900, 420],
    says: 'The edge of a board between the jaws of a caliper: its thickness; and the sheet with its width and height.',
    shapes: [
      rect('board', 'stand', [130, 150, 420, 270]),
      area('fixed-jaw', 'monitor', [
        [20, 400],
        [130, 400],
        [130, 380],
        [95, 330],
        [95, 270],
        [250, 270],
        [250, 292],
        [130, 310],
        [130, 340],
        [20, 360],
      ]),
      area('sliding-jaw', 'monitor', [
        [20, 20],
        [95, 60],
        [95, 150],
        [250, 150],
        [250, 128],
        [130, 110],
        [130, 40],
        [60, 0],
        [20, 0],
      ]),
      rect('sheet', 'stand', [570, 60, 860, 260]),
      label('sheet-name', [715, 160], 'sheet'),
    ],
    dimensions: [
      upright('thickness', [420, 150], [420, 270], 1, mm(board?.thickness), { base: 420 }),
      across('sheet-width', [570, 260], [860, 260], 1, mm(board?.sheet.width), { base: 260 }),
      upright('sheet-height', [860, 60], [860, 260], 1, mm(board?.sheet.height)),
    ],
  };
}
