import type { Contour } from '$lib/geometry/contour.ts';
import { letter } from './lettering.ts';
import type { Part } from '$lib/workshop/part.ts';
import { labelsOf } from './pieceLabel.ts';

/** Everything of a part on the `engrave` layer: its centre lines, and its labels as strokes. */
export const engravingOf = (part: Part): readonly Contour[] => [
  ...part.mark,
  ...labelsOf(part).flatMap(({ text, height, x, y }) => letter(text, { height, x, y, anchor: 'middle' })),
];
