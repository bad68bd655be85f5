import type { Circle, Path } from '$lib/geometry/contour.ts';
import type { Part } from './part.ts';

/** A body to print or mill, as prisms that stand on each other. Lengths in mm, z up from the bottom of the first level. */
export interface Body {
  /** Stands in files as the object's name. */
  readonly name: string;
  /** From the bottom up. */
  readonly levels: readonly Level[];
  /**
   * The outline at the top of the body, where it leans: vertex by vertex the first contour of every level, which it has at
   * the bottom, some of them so much higher or lower in y; in between in proportion.
   */
  readonly roof?: Path;
}

/**
 * One prism. Its contours neither touch nor cross: the outermost bound the material, those within them bound holes,
 * those within holes are material again, whichever way they run. A contour that is equal in two neighbouring levels is
 * one wall.
 */
export interface Level {
  readonly height: number;
  readonly contours: readonly (Path | Circle)[];
}

/** The outline of a part, with its holes, as a body of one level. */
export const extruded = (
  name: string,
  { outside, inside }: Pick<Part, 'outside' | 'inside'>,
  height: number,
): Body => ({
  name,
  levels: [{ height, contours: [outside, ...inside] }],
});
