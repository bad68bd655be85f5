import type { Point } from '$lib/geometry/point.ts';
import type { AngleDimension, Dimension, Label } from './view.ts';

/** Where else the text of an item may stand, the best place first: its own. */
export function alternatives(item: Label | Dimension | AngleDimension): readonly (typeof item)[] {
  switch (item.kind) {
    case 'label':
      return labels(item);
    case 'dimension':
      return dimensions(item);
    case 'angle':
      return angles(item);
  }
}

const SHARES = [0.5, 0.35, 0.65, 0.22, 0.78, 0.1, 0.9];

const dimensions = (item: Dimension): Dimension[] => [
  item,
  ...SHARES.map((textAt) => ({ ...item, textAt })),
  ...(['to', 'from'] as const).map((beside) => ({ ...item, beside })),
  ...(['to', 'from'] as const).map((beside) => ({ ...item, beside, level: true })),
];

/** Of the arc, as shares of the radius asked for. */
const RADII = [1, 1.25, 0.8, 1.55, 0.62, 1.9, 2.3, 0.45];

const angles = (item: AngleDimension): AngleDimension[] =>
  RADII.flatMap((share): AngleDimension[] => {
    const arc = { ...item, radius: share * item.radius };
    return [
      arc,
      { ...arc, beyond: undefined, textAt: 0.5, anchor: 'start' },
      { ...arc, beyond: undefined, textAt: 0.5, anchor: 'end' },
      ...SHARES.map((textAt): AngleDimension => ({ ...arc, beyond: undefined, textAt })),
      { ...arc, beyond: 'to' },
      { ...arc, beyond: 'from' },
    ];
  });

/** Steps that a label moves from its place, in text sizes, the nearest first. */
const STEPS: readonly Point[] = [1, 2, 3, 4.5].flatMap((far): Point[] => [
  [0, -far],
  [0, far],
  [far, 0],
  [-far, 0],
  [far, -far],
  [-far, -far],
  [far, far],
  [-far, far],
]);

const labels = (item: Label): Label[] => [
  item,
  ...STEPS.map(([x, y]): Label => {
    const [right, down] = item.shift ?? [0, 0];
    return { ...item, shift: [right + x, down + y] };
  }),
];
