import type { Contour } from '$lib/geometry/contour.ts';

/** The layers in the order in which a cutter should take them: a part that is cut loose can no longer be marked. */
export const layerNames = ['mark', 'inside', 'outside'] as const;
export type LayerName = (typeof layerNames)[number];

/**
 * What one cut file shows: contours by layer on a plate. Origin at the plate's lower left, x right, y up, mm.
 * `outside` is cut round parts, `inside` are holes and slots, `mark` is engraved or drawn.
 */
export interface Plate {
  /** Stands in the file as its title, and in error messages. */
  readonly name: string;
  readonly width: number;
  readonly height: number;
  readonly layers: Readonly<Record<LayerName, readonly Contour[]>>;
}
