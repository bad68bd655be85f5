import type { Vec3 } from '$lib/geometry/point.ts';
import type { Pen, Subject } from '$lib/drawing/view.ts';

/**
 * Everything round the desk as it is in space, for any renderer: flat faces, and lines that keep their weight however far
 * away they are. Desk frame, mm.
 */
export interface SpaceScene {
  readonly faces: readonly SpaceFace[];
  readonly lines: readonly SpaceLine[];
  /** A ball that holds all but the walls: what a picture of it fits. */
  readonly middle: Vec3;
  readonly radius: number;
}

/** A flat face, seen from the side that its normal points to only. */
export interface SpaceFace {
  readonly subject: Subject;
  /** Counter-clockwise as seen from outside; simple, it may be hollow. */
  readonly corners: readonly Vec3[];
  /** Unit vector outwards. */
  readonly normal: Vec3;
  /** Whether it is drawn pale, as what is not looked at. */
  readonly faint: boolean;
  /** 1 for what lies on another face in the same plane, 0 for what does not. */
  readonly layer: 0 | 1;
}

export interface SpaceLine {
  readonly subject: Subject;
  /** Its weight. Dashes are cut already. */
  readonly pen: Pen;
  readonly from: Vec3;
  readonly to: Vec3;
  readonly faint: boolean;
  /** Which faces meet in it, by their outward normals; none where it is a line by itself. */
  readonly between: readonly Vec3[];
  /** Whether they meet so bluntly that only the outline is drawn: where one of them is seen and the other is not. */
  readonly blunt: boolean;
}
