import type { Contour } from '$lib/geometry/contour.ts';
import type { LayerColours } from '$lib/project/project.ts';

/** The layers in the order in which a cutter should take them: a part that is cut loose can no longer be engraved. */
export const layerNames = ['engrave', 'inside', 'outside'] as const;
export type LayerName = (typeof layerNames)[number];

/** A layer's colour: the project file calls the engraved one `mark`. */
export const colourOf = (colours: LayerColours, layer: LayerName): string =>
  colours[layer === 'engrave' ? 'mark' : layer];

/**
 * What one cut file shows: contours by layer on a plate. Origin at the plate's lower left, x right, y up, mm.
 * `outside` is cut round parts, `inside` are holes and slots, `engrave` is lettering and centre lines, not cut.
 */
export interface Plate {
  /** Stands in the file as its title, and in error messages. */
  readonly name: string;
  readonly width: number;
  readonly height: number;
  readonly layers: Readonly<Record<LayerName, readonly Contour[]>>;
}
