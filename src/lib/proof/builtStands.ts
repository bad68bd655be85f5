import { degrees, radians } from '$lib/geometry/angle.ts';
import { sideNames, type Layout, type Project, type SideName } from '$lib/project/project.ts';
import { asStood } from '$lib/project/stood.ts';
import { proveSide } from './prove.ts';

/** A finished stand by its slope: degrees, front high positive, and the height of its lowest edge over the surface, mm. */
export interface BuiltStand {
  readonly tilt: number;
  readonly lift: number;
}

/** Readings that leave the front's height or the slope wider open than this say too little: half of what holds 95 of a hundred. */
const WIDEST = { front: 10, tilt: radians(3) };

/**
 * The stands of a layout as its readings have them; null where the readings of a side do not say how it stands, or there are
 * none.
 */
export function builtStands(project: Project, layout: Layout): Readonly<Record<SideName, BuiltStand>> | null {
  if (layout.built === null) return null;
  const [left, right] = sideNames.map((side) => builtStand(project, layout, side));
  return left && right ? { left, right } : null;
}

function builtStand(project: Project, layout: Layout, side: SideName): BuiltStand | null {
  const proof = proveSide(project, layout, side);
  if (!proof.ok || !proof.value) return null;
  const { standing, spread } = proof.value;
  if (!(spread.standing.front < WIDEST.front && spread.standing.tilt < WIDEST.tilt)) return null;
  const { front, tilt } = standing;
  // Only an upward tilt raises the front; what reads as a little under the surface lies on it.
  const rise = Math.max(0, asStood(project.speaker).depth * Math.sin(tilt));
  return { tilt: degrees(tilt), lift: Math.max(0, front - rise) };
}
