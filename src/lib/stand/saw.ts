import type { Vec3 } from '$lib/geometry/point.ts';
import type { Workshop } from '$lib/project/project.ts';

/** A face of a block that may lie on a machine's table. */
export type BlockFace = 'inboard side' | 'outboard side' | 'slope';

/** One cut through a block, radians and mm. */
export interface SawCut {
  /** What it makes. */
  readonly makes: 'slope' | 'front end' | 'rear end';
  /** By hand where no machine of the workshop reaches through. */
  readonly tool: 'table saw' | 'band saw' | 'hand';
  /** On the table. */
  readonly down: BlockFace;
  /** What of the block meets the blade first. */
  readonly leads: 'front' | 'rear' | 'inboard side' | 'outboard side';
  /** On which side of the blade, seen from where one stands, the work is held; the waste falls free on the other. */
  readonly held: 'left' | 'right';
  /** Angle between the block's base and the feed, set on the carriage; 0 where the base lies square across. */
  readonly mitre: number;
  /** Tilt of the blade from square to the table, away from the work. */
  readonly bevel: number;
  /** Wood that the blade has to pass, along it. */
  readonly depth: number;
  /** Left outside the line, to be planed off. */
  readonly leave: number;
  readonly mitreSetUp: SetUp;
  readonly bevelSetUp: SetUp;
}

/** Heights that set an angle without a protractor, mm. */
export interface SetUp {
  /** Under the end of a sine bar of 100 mm: length · sin. */
  readonly sineBar: number;
  /** Of an angle block on 100 mm of base: base · tan. */
  readonly angleBlock: number;
}

/** What set-up heights are given for, mm. */
export const SET_UP_LENGTH = 100;

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

/** Angles are set to no better than this, radians: a machine that tilts to 45° saws 45°. */
const ANGLE_SLACK = 1e-9;

/**
 * What of a workshop saws through so much wood at such a tilt: the table saw where it reaches, else a band saw, else a hand.
 *
 * @param depth Along the blade, mm.
 * @param bevel Radians.
 */
export function sawFor({ saw, bandSaw }: Workshop, depth: number, bevel: number): SawCut['tool'] {
  const tilts = (most: number): boolean => bevel <= (most * Math.PI) / 180 + ANGLE_SLACK;
  if (depth <= saw.depth && tilts(saw.tiltsMost)) return 'table saw';
  if (bandSaw && depth <= bandSaw.height && tilts(bandSaw.tiltsMost)) return 'band saw';
  return 'hand';
}
