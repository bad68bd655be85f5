import type { Finding } from '$lib/plan/document.ts';
import { axisMiss, axisTooHigh, inclination } from './aim.ts';
import { levelBalance, timeBalance } from './balance.ts';
import type { Check, PlacedCheck, Scene } from './check.ts';
import { closeToScreen, closeToWall, screenHidden } from './clearance.ts';
import { idleMat } from './idleMat.ts';
import { monitorCollision, sightLine } from './monitors.ts';
import { deskEdge, wallBehind } from './room.ts';
import { sliding, tipping } from './standing.ts';
import { triangleAngle } from './triangle.ts';
import { handWork } from './handWork.ts';
import { harm } from './harm.ts';

/** Of how things are placed, in the order in which they are told. */
const places: readonly PlacedCheck[] = [
  axisMiss,
  axisTooHigh,
  sightLine,
  screenHidden,
  closeToScreen,
  closeToWall,
  timeBalance,
  levelBalance,
  triangleAngle,
  inclination,
];

/** All that ask for nothing of the stands. */
export const placedChecks: readonly PlacedCheck[] = [monitorCollision, ...places];

const checks: readonly Check[] = [
  monitorCollision,
  wallBehind,
  deskEdge,
  tipping,
  sliding,
  idleMat,
  ...places,
  handWork,
];

/** Everything the checks have to say, worst first; within a level in the order of the checks. */
export function findingsOf(scene: Scene): Finding[] {
  const found: Finding[] = [];
  for (const check of checks) found.push(...check(scene));
  return found.sort((a, b) => harm[a.level] - harm[b.level]);
}
