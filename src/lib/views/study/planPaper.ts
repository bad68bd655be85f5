import type { Box } from '$lib/drawing/box.ts';
import type { DimensionStyle } from '$lib/drawing/dimensionStyle.ts';
import type { Place } from '$lib/drawing/place.ts';

/** A piece of screen and where a view lies on it, px. */
interface PlanPaper {
  readonly width: number;
  readonly height: number;
  readonly place: Place;
}

/** Paper of a width with what is in the box as large as there is room for it and one row of numbers round it. */
export function planPaper(
  [left, bottom, right, top]: Box,
  width: number,
  mostHeight: number,
  { first, overrun }: DimensionStyle,
): PlanPaper {
  const border = first + overrun;
  const [across, up] = [right - left, top - bottom];
  const scale = Math.max(Number.MIN_VALUE, Math.min((width - 2 * border) / across, (mostHeight - 2 * border) / up));
  const spare = width - scale * across;
  return {
    width,
    height: Math.round(scale * up + 2 * border),
    place: { scale, origin: [spare / 2 - scale * left, border + scale * top] },
  };
}
