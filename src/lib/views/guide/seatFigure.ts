import { across, type Figure, label, line, rect, upright } from '$lib/views/figure/figure.ts';
import { EAR, floor, headAbove, sitter } from '$lib/views/figure/person.ts';
import type { GuideNumbers } from './numbers.ts';

/** Somebody at the desk from the side; above it the head and the desk's middle from above. */
export function seatFigure({ layout: { listener }, mm }: GuideNumbers): Figure {
  const edge = 330;
  return {
    extent: [-420, -45, 1700, 1330],
    says: 'Somebody sitting at the desk: the height of the ear over the floor, from the desk’s front edge back to the ear, and how far the head is off the middle of the desk.',
    shapes: [
      ...floor(-420, 900),
      ...sitter(0),
      rect('board', 'desk', [edge, 700, 880, 740]),
      rect('leg', 'desk', [800, 0, 840, 700]),
      rect('desk-above', 'desk', [1010, 800, 1690, 1200]),
      line(
        'middle',
        'desk',
        [
          [1350, 300],
          [1350, 1240],
        ],
        'centre',
      ),
      ...headAbove([1450, 520]),
      label('above', [1350, 150], 'from above'),
    ],
    dimensions: [
      upright('ear-height', [-250, 0], EAR, -1, mm(listener.earHeight)),
      across('setback', EAR, [edge, 740], 1, mm(listener.setback)),
      across('offset', [1350, 520], [1450, 520], -1, mm(listener.offset), { base: 420, beside: 'to' }),
    ],
  };
}
