import { radians } from '$lib/geometry/angle.ts';
import type { Vec3 } from '$lib/geometry/point.ts';
import { spreadRing } from '$lib/geometry/spreadRing.ts';
import type { SideName } from '$lib/project/project.ts';
import type { SideProof } from '$lib/proof/prove.ts';
import { stood } from '$lib/proof/standing.ts';
import type { SidePlan } from '$lib/solution/document.ts';
import type { SideSure } from '$lib/solution/howSure.ts';

/** An axis that is drawn, from the aimed point past the head, and where it passes in 95 of 100 round its point nearest the head. */
export interface DrawnAxis {
  readonly side: SideName;
  readonly start: Vec3;
  readonly at: Vec3;
  /** Unit vector. */
  readonly forward: Vec3;
  readonly ring: readonly Vec3[];
}

/** The axis of a stand as its readings have it. */
export function axisBuilt({ side, cabinet, standing, pass, spread }: SideProof): DrawnAxis {
  const { forward, onBaffle } = stood(cabinet, standing);
  return {
    side,
    start: onBaffle(cabinet.aimed),
    at: pass.at,
    forward,
    ring: spreadRing(pass.at, forward, spread.pass),
  };
}

/** The planned axis of a stand that is cut by the numbers as measured. */
export function axisPlanned(side: SideName, { aimedPoint, axis, nearest }: SidePlan, { ellipse }: SideSure): DrawnAxis {
  const ring = spreadRing(nearest, axis, { ...ellipse, turn: radians(ellipse.turn) });
  return { side, start: aimedPoint, at: nearest, forward: axis, ring };
}
