import { aimChecks } from './aim.ts';
import { balanceChecks } from './balance.ts';
import type { Check, PlacedCheck, Scene } from './check.ts';
import { clearanceChecks } from './clearance.ts';
import type { Finding } from './finding.ts';
import { handWorkChecks } from './handWork.ts';
import { harm } from './harm.ts';
import { screenChecks } from './monitors.ts';
import { roomChecks } from './room.ts';
import { standingChecks } from './standing.ts';
import { surfaceChecks, surfacePlacedChecks } from './surfaces.ts';
import { triangleChecks } from './triangle.ts';

/** All that ask for nothing of the stands, in the order in which they are told. */
export const placedChecks: readonly PlacedCheck[] = [
  ...screenChecks,
  ...surfacePlacedChecks,
  ...aimChecks,
  ...clearanceChecks,
  ...balanceChecks,
  ...triangleChecks,
];

const checks: readonly Check[] = [
  ...roomChecks,
  ...standingChecks,
  ...surfaceChecks,
  ...placedChecks,
  ...handWorkChecks,
];

/** Everything the checks have to say, worst first; within a level in the order of the checks. */
export function findingsOf(scene: Scene): Finding[] {
  const found: Finding[] = [];
  for (const check of checks) found.push(...check(scene));
  return found.sort((a, b) => harm[a.level] - harm[b.level]);
}
