import { radiatingOf } from '$lib/acoustics/radiating.ts';
import { across, circle, type Figure, label, line, rect, upright } from '$lib/views/figure/figure.ts';
import type { GuideNumbers } from './numbers.ts';

/** The front of a cabinet with its upper and its lower driver. */
export function driversFigure({ project: { speaker }, mm }: GuideNumbers): Figure {
  const byHeight = [...speaker.drivers].sort((one, other) => other.height - one.height);
  const upper = byHeight[0];
  const lower = byHeight.length > 1 ? byHeight.at(-1) : undefined;
  const { diameter: radiating, estimated } = lower ? radiatingOf(lower) : { diameter: null, estimated: false };
  return {
    extent: [-190, -25, 500, 545],
    says: 'The front of a cabinet: the height of each driver’s centre over the bottom edge of the baffle, the diameter of its rim and of what radiates within it, and how far it is off the middle.',
    shapes: [
      rect('front', 'cabinet', [0, 0, 310, 520]),
      line(
        'middle',
        'cabinet',
        [
          [155, -25],
          [155, 545],
        ],
        'centre',
      ),
      circle('upper', 'driver', [175, 405], 48),
      ...(lower
        ? [
            circle('lower', 'driver', [155, 165], 115),
            circle('cone', 'driver', [155, 165], 90, { pen: 'narrow' as const }),
            label('lower-name', [155, 95], lower.name),
          ]
        : []),
      label('upper-name', [175, 480], upper?.name ?? ''),
    ],
    dimensions: [
      upright('upper-height', [175, 0], [175, 405], 2, mm(upper?.height), { base: 310 }),
      ...(lower
        ? [
            upright('lower-height', [155, 0], [155, 165], 1, mm(lower.height), { base: 310 }),
            upright('radiating', [155, 75], [155, 255], -1, `⌀ ${estimated ? '≈ ' : ''}${mm(radiating)}`, { base: 0 }),
            upright('rim', [155, 50], [155, 280], -2, `⌀ ${mm(lower.diameter)}`, { base: 0 }),
          ]
        : []),
      across('offset', [155, 520], [175, 405], 1, mm(upper?.offset), { beside: 'to' }),
    ],
  };
}
