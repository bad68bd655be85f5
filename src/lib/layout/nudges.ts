import type { Layout, Speaker } from '$lib/project/project.ts';
import type { SureKey } from '$lib/project/sure.ts';

/** What a loudspeaker is aimed in. */
export interface Scene {
  readonly speaker: Speaker;
  readonly layout: Layout;
}

/** The scene with one measured value off by so much. */
export type Nudge = (scene: Scene, by: number) => Scene;

const inSpeaker =
  (key: 'depth' | 'baffleRake'): Nudge =>
  ({ speaker, layout }, by) => ({ speaker: { ...speaker, [key]: speaker[key] + by }, layout });

/** The rule that drew the baffle moves every centre on it. */
const inDrivers =
  (key: 'height' | 'offset'): Nudge =>
  ({ speaker, layout }, by) => ({
    speaker: { ...speaker, drivers: speaker.drivers.map((driver) => ({ ...driver, [key]: driver[key] + by })) },
    layout,
  });

const inListener =
  (key: 'earHeight' | 'setback' | 'offset'): Nudge =>
  ({ speaker, layout }, by) => ({
    speaker,
    layout: { ...layout, listener: { ...layout.listener, [key]: layout.listener[key] + by } },
  });

/** Both marks: only the side's own counts for its aim. */
const inMarks =
  (key: 'x' | 'y'): Nudge =>
  ({ speaker, layout }, by) => {
    const { left, right } = layout.placement;
    const placement = { left: { ...left, [key]: left[key] + by }, right: { ...right, [key]: right[key] + by } };
    return { speaker, layout: { ...layout, placement } };
  };

const inDesk: Nudge = ({ speaker, layout }, by) => ({
  speaker,
  layout: { ...layout, desk: { ...layout.desk, height: layout.desk.height + by } },
});

/** The measured values that an aim hangs on, and how the scene looks with one of them off by so much. */
export const nudges: readonly (readonly [key: SureKey, nudge: Nudge])[] = [
  ['deskHeight', inDesk],
  ['earHeight', inListener('earHeight')],
  ['setback', inListener('setback')],
  ['headOffset', inListener('offset')],
  ['speakerDepth', inSpeaker('depth')],
  ['baffleRake', inSpeaker('baffleRake')],
  ['driverHeight', inDrivers('height')],
  ['driverOffset', inDrivers('offset')],
  ['markX', inMarks('x')],
  ['markY', inMarks('y')],
];
