import type { Solid } from '$lib/geometry/solid.ts';
import type { Point, Vec3 } from '$lib/geometry/point.ts';
import type { Pose } from '$lib/layout/pose.ts';
import type { Triangle } from '$lib/layout/triangle.ts';
import type { Layout, SideName, Speaker, Workshop } from '$lib/project/project.ts';
import type { LengthDisplay } from '$lib/project/units.ts';
import type { Block } from '$lib/stand/body.ts';
import type { Balance } from '$lib/stand/balance.ts';
import type { Site } from '$lib/stand/remedy.ts';
import type { Finding } from './finding.ts';

/** Where everything is, in mm and radians. */
export interface Placed {
  readonly speaker: Speaker;
  readonly layout: Layout;
  readonly head: Vec3;
  /** m/s. */
  readonly speedOfSound: number;
  readonly triangle: Triangle;
  readonly poses: Readonly<Record<SideName, Pose>>;
  readonly cabinets: Readonly<Record<SideName, Solid>>;
  /** Of each screen: its body, or those of a curved one's strips. */
  readonly monitors: readonly (readonly Solid[])[];
}

/** What a check looks at: everything solved so far. */
export interface Scene extends Placed {
  /** Corners of each stand's base on the desk. */
  readonly footprints: Readonly<Record<SideName, readonly Point[]>>;
  readonly balances: Readonly<Record<SideName, Balance>>;
  /** What is sawn from solid wood for each stand. */
  readonly blocks: Readonly<Record<SideName, readonly Block[]>>;
  /** How the project shows lengths: advice keeps to what its tape can be set to. */
  readonly display: LengthDisplay;
  /** The machines that make the stands. */
  readonly tools: Workshop;
  /** What it takes to build each stand again with other settings, for advice; null where none is asked for. */
  readonly sites: Readonly<Record<SideName, Site>> | null;
}

/** A check looks at the scene and says what it has to say; nothing when all is well. */
export type Check = (scene: Scene) => Finding[];

/** One that asks for nothing of the stands. */
export type PlacedCheck = (placed: Placed) => Finding[];
