import type { Point } from '$lib/geometry/point.ts';

/** A dimension as lines on the paper, in paper units, y down: what screen and file draw alike. */
export interface DrawnDimension {
  /** Extension lines and legs. */
  readonly extensions: readonly (readonly Point[])[];
  /** The dimension line, an arc as a chain of short pieces, and the tails of outside arrows. */
  readonly lines: readonly (readonly Point[])[];
  /** Filled triangles, the tip first. */
  readonly arrows: readonly (readonly [Point, Point, Point])[];
  readonly text: DrawnText;
}

export interface DrawnText {
  readonly text: string;
  /** On the base line. */
  readonly at: Point;
  /** Degrees clockwise on the paper. */
  readonly turn: number;
  readonly anchor: 'start' | 'middle' | 'end';
}
