import type { WidthLayer } from './body.ts';

/** The finished width: what the layers add up to, in their order, mm. */
export const widthOf = (layers: readonly WidthLayer[]): number =>
  layers.reduce((sum, { each, count }) => sum + each * count, 0);

/** Without the layers that there are none of. */
export const present = (layers: readonly WidthLayer[]): readonly WidthLayer[] =>
  layers.filter(({ each, count }) => each > 0 && count > 0);
