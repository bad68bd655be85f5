import type { Driver } from '$lib/project/project.ts';
import { asMm, asUnit, says } from '$lib/project/sentence.ts';

/** What of a driver sends sound out, across, mm. */
export interface Radiating {
  readonly diameter: number;
  /** Whether nobody stated it. */
  readonly estimated: boolean;
}

/** The dome of most tweeters, mm: one inch. Rule of thumb. */
const DOME = 25;

/**
 * Cone and half its surround as a share of the rim. Rule of thumb; of a rim of 114 to 227 mm it leaves 25 to 50 mm, which
 * a handbook's chapter on loudspeakers says that the nominal diameter is more than the effective one.
 */
const CONE_SHARE = 0.78;

/** How a diameter that nobody stated is estimated, for whoever reads a number that hangs on it. */
export const ESTIMATE_RULE = says`a tweeter counts as a dome of ${asMm(DOME)}, or of its rim where that is smaller, any other driver as a cone of ${asUnit(CONE_SHARE, 'ratio')} of its rim: rule of thumb`;

/**
 * The diameter that makes a driver beam: the stated one, else an estimate from its role and its rim. A tweeter's rim is
 * mostly a flange round its dome, so it counts only where it is smaller than the common dome. Never more than the rim,
 * and never less for a larger rim.
 */
export function radiatingOf({ role, diameter, radiating }: Pick<Driver, 'role' | 'diameter' | 'radiating'>): Radiating {
  if (radiating !== null) return { diameter: radiating, estimated: false };
  return { diameter: role === 'tweeter' ? Math.min(diameter, DOME) : CONE_SHARE * diameter, estimated: true };
}
