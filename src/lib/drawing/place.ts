import type { Point } from '$lib/geometry/point.ts';

/** Where a view lies on the paper: paper units for each real mm, and the paper point of the view's `[0, 0]`. Paper y runs down. */
export interface Place {
  readonly scale: number;
  readonly origin: Point;
}

export const toPaper = ({ scale, origin }: Place, [x, y]: Point): Point => [
  origin[0] + scale * x,
  origin[1] - scale * y,
];

/** How the paper is looked at: enlarged `k` times, then moved. */
export interface Zoom {
  readonly k: number;
  readonly x: number;
  readonly y: number;
}

/** The same view on the enlarged and moved paper. */
export const zoomed = ({ scale, origin }: Place, { k, x, y }: Zoom): Place => ({
  scale: scale * k,
  origin: [k * origin[0] + x, k * origin[1] + y],
});
