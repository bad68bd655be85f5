import { reachOf, stepFor, type HeadWay } from '$lib/acoustics/headReach.ts';
import { hearingOf } from './headVoices.ts';
import type { Plan } from './document.ts';

/** How far the seat's head may move straight to each side, up and down, before the sound gives out (`HEAD_LIMITS`), mm. */
export type SafeZone = Readonly<Record<'left' | 'right' | 'up' | 'down', number>>;

/** The safe zone of the seat, across the view to the loudspeakers. Some milliseconds. */
export function safeZoneOf(plan: Plan): SafeZone {
  const { project, head, speedOfSound } = plan;
  const hear = hearingOf(project, plan);
  const step = stepFor(Math.max(0, ...project.speaker.crossovers.map(({ frequency }) => frequency)), speedOfSound);
  const far = (way: HeadWay): number => reachOf(hear, head, way, step).distance;
  return { left: far('left'), right: far('right'), up: far('up'), down: far('down') };
}
