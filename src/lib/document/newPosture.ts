import { posture as fields } from '$lib/project/fields/listener.ts';
import { startOf } from '$lib/project/fields/starts.ts';
import type { Posture, Project } from '$lib/project/project.ts';
import { freeName } from './freeName.ts';

/** A little nearer to the desk and lower than upright. */
export function newPosture({ listener }: Project['layouts'][number]): Posture {
  return {
    name: freeName('posture', listener.postures),
    setback: listener.setback - 100,
    earHeight: Math.max(fields.earHeight.min, listener.earHeight - 30),
    ...startOf({ offset: fields.offset, deskHeight: fields.deskHeight, weight: fields.weight }),
  };
}
