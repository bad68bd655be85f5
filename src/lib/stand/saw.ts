import type { Sentence } from '$lib/project/sentence.ts';
import type { Vec3 } from '$lib/geometry/point.ts';

/** One cut of a saw, radians and mm; the sentence says what is cut, and how the wood lies. */
export interface SawCut extends Sentence {
  /** Turn of the cut from square across the piece; 0 for a rip along a fence. */
  readonly mitre: number;
  /** Tilt of the blade from square to the table. */
  readonly bevel: number;
  /** From the fence to the blade at the table; null for a cut along a line. */
  readonly fence: number | null;
  /** Wood that the blade has to pass, square to the table. */
  readonly depth: number;
  /** Rise to set the tilt by, over 100 mm along a sine bar and over 100 mm of base. */
  readonly setUp: SetUp;
}

/** Heights that set an angle without a protractor, mm. */
export interface SetUp {
  /** Under the end of a sine bar of 100 mm: length · sin. */
  readonly sineBar: number;
  /** Of an angle block on 100 mm of base: base · tan. */
  readonly angleBlock: number;
}

/** What set-up heights are given for, mm. */
const SET_UP_LENGTH = 100;

/** Rise under one end of a bar that lies on its slope, mm. */
export const sineBarRise = (bar: number, angle: number): number => bar * Math.sin(angle);

export const setUpFor = (angle: number): SetUp => ({
  sineBar: sineBarRise(SET_UP_LENGTH, angle),
  angleBlock: SET_UP_LENGTH * Math.tan(angle),
});

/**
 * The two settings that saw a plane through a board that lies flat: the mitre, from square across its length, and the
 * blade's tilt from square to its face. 0 to 90° both.
 *
 * @param normal Square to the plane, in the board's own frame: x along it, y across it, z square to its face; any length.
 */
export function compoundCut(normal: Vec3): { readonly mitre: number; readonly bevel: number } {
  const [x, y, z] = [Math.abs(normal.x), Math.abs(normal.y), Math.abs(normal.z)];
  return { mitre: Math.atan2(y, x), bevel: Math.atan2(z, Math.hypot(x, y)) };
}
