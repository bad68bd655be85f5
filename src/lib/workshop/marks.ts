import type { Contour } from '$lib/geometry/contour.ts';
import { letter } from './lettering.ts';
import type { Part } from './part.ts';

/** Everything of a part on the `mark` layer: its marks, and its labels as strokes. */
export const marksOf = ({ mark, labels }: Part): readonly Contour[] => [
  ...mark,
  ...labels.flatMap(({ text, height, x, y }) => letter(text, { height, x, y, anchor: 'middle' })),
];
