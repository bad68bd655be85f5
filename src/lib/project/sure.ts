/**
 * How sure a measured value is: half the width of the span in which it lies for certain, mm (degrees for the rake). One
 * value for the whole project, for the same hand measures everywhere with the same tape.
 *
 * What a careful hand reaches with a tape, a square and a calliper, common practice, no source. Ears move with every
 * breath and with the mood; a board is even to a few hundredths.
 */
export const byTape = {
  deskWidth: 2,
  deskDepth: 2,
  deskHeight: 2,
  wallGap: 5,
  earHeight: 10,
  setback: 20,
  headOffset: 10,
  monitor: 5,
  speakerWidth: 1,
  speakerHeight: 1,
  speakerDepth: 1,
  baffleRake: 0.5,
  driverHeight: 1,
  driverOffset: 1,
  markX: 2,
  markY: 2,
  thickness: 0.05,
} as const;

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
