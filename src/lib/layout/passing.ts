import { degrees } from '$lib/geometry/angle.ts';
import { along, cross, dot, scale, subtract, vec3, type Point, type Vec3 } from '$lib/geometry/point.ts';
import type { Layout, SideName } from '$lib/project/project.ts';
import { headOf } from './ears.ts';
import type { Scene } from './nudges.ts';
import { placeSide } from './place.ts';
import type { Pose } from './pose.ts';

/** The layout with an aim that no longer follows anything: its stands are cut. */
export const asCut = (layout: Layout, { toe, tilt, lift }: Pose): Layout => ({
  ...layout,
  aim: {
    ...layout.aim,
    toe: { rule: 'as-set', degrees: degrees(toe) },
    tilt: { rule: 'as-set', degrees: degrees(tilt) },
    over: null,
  },
  stand: { ...layout.stand, lift },
});

/** From the head to where the axis passes it nearest, mm; null where there is no such scene. */
export function passing({ speaker, layout }: Scene, side: SideName): Vec3 | null {
  const pose = placeSide(speaker, layout, side);
  return pose.ok ? passingOf(pose.value, headOf(layout.listener, layout.desk)) : null;
}

/** The same of an axis that is known. */
export function passingOf({ aimedPoint, forward }: Pick<Pose, 'aimedPoint' | 'forward'>, head: Vec3): Vec3 {
  const fromHead = subtract(aimedPoint, head);
  return along(fromHead, forward, -dot(fromHead, forward));
}

/** The plane square to an axis as a card that is held up to it: first level, to the right as seen from the chair, then up. */
export function onCard(axis: Vec3): (vector: Vec3) => Point {
  const level = Math.hypot(axis.x, axis.y);
  const across = scale(vec3(-axis.y, axis.x, 0), 1 / level);
  const up = cross(axis, across);
  return (vector) => [dot(vector, across), dot(vector, up)];
}
