import { sure } from './fields/sure.ts';
import { startOf } from './fields/starts.ts';

/**
 * How sure a measured value is, mm (degrees for the rake), where nobody says. One value for the whole project, for the same
 * hand measures everywhere with the same tape.
 */
export const byTape = startOf(sure);

export type SureKey = keyof typeof byTape;

/** The span of every measured value: the project's `sure`. */
export type Sure = Readonly<Record<SureKey, number>>;

/** The pattern of a pointer, with `*` for any entry of a list, and what says how sure the values there are. */
const patterns: readonly (readonly [pattern: string, key: SureKey])[] = [
  ['/layouts/*/desk/width', 'deskWidth'],
  ['/layouts/*/desk/depth', 'deskDepth'],
  ['/layouts/*/desk/height', 'deskHeight'],
  ['/layouts/*/desk/wallGap', 'wallGap'],
  ['/layouts/*/listener/earHeight', 'earHeight'],
  ['/layouts/*/listener/setback', 'setback'],
  ['/layouts/*/listener/offset', 'headOffset'],
  ['/layouts/*/listener/postures/*/earHeight', 'earHeight'],
  ['/layouts/*/listener/postures/*/setback', 'setback'],
  ['/layouts/*/monitors/*/x', 'monitor'],
  ['/layouts/*/monitors/*/y', 'monitor'],
  ['/layouts/*/monitors/*/width', 'monitor'],
  ['/layouts/*/monitors/*/height', 'monitor'],
  ['/layouts/*/monitors/*/bottom', 'monitor'],
  ['/layouts/*/monitors/*/depth', 'monitor'],
  ['/speaker/width', 'speakerWidth'],
  ['/speaker/height', 'speakerHeight'],
  ['/speaker/depth', 'speakerDepth'],
  ['/speaker/baffleRake', 'baffleRake'],
  ['/speaker/drivers/*/height', 'driverHeight'],
  ['/speaker/drivers/*/offset', 'driverOffset'],
  ['/layouts/*/placement/left/x', 'markX'],
  ['/layouts/*/placement/right/x', 'markX'],
  ['/layouts/*/placement/left/y', 'markY'],
  ['/layouts/*/placement/right/y', 'markY'],
  ['/stock/*/thickness', 'thickness'],
];

/** What says how sure the value at a pointer is; null for what nobody measures. */
export function sureKeyOf(pointer: string): SureKey | null {
  const pattern = pointer.replace(/\/\d+(?=\/|$)/g, '/*');
  return patterns.find(([one]) => one === pattern)?.[1] ?? null;
}
