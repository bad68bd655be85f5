import { degrees } from '$lib/geometry/angle.ts';
import { along, dot, length, scale, subtract, type Vec3 } from '$lib/geometry/point.ts';
import type { Layout, SideName, Speaker } from '$lib/project/project.ts';
import type { Sure } from '$lib/project/sure.ts';
import { headOf } from './ears.ts';
import { nudges, type Scene } from './nudges.ts';
import { placeSide } from './place.ts';
import type { Pose } from './pose.ts';

/**
 * How far from where it is planned the axis of a stand, cut by the numbers as measured, may pass the head, mm, 0 or more:
 * root of the sum of squares over the measured values, each off by as much as `sure` admits while toe, tilt and lift stay
 * as cut. As for an aim, values that lie anywhere within their spans with equal chance keep within it in at least nine
 * cases of ten. The cabinet’s depth does not count: the slope that it was cut for does not change with it. Null when the
 * aim has no answer.
 */
export function missSpread(speaker: Speaker, layout: Layout, side: SideName, sure: Sure): number | null {
  const planned = placeSide(speaker, layout, side);
  if (!planned.ok) return null;
  const cut: Scene = { speaker, layout: asCut(layout, planned.value) };
  const squares = nudges.map(([key, nudge]) => {
    if (key === 'speakerDepth') return 0;
    const [less, more] = [passed(nudge(cut, -sure[key]), side), passed(nudge(cut, sure[key]), side)];
    return less && more ? length(scale(subtract(more, less), 0.5)) ** 2 : 0;
  });
  return Math.sqrt(squares.reduce((sum, one) => sum + one, 0));
}

/** The layout with an aim that no longer follows anything. */
const asCut = (layout: Layout, { toe, tilt, lift }: Pose): Layout => ({
  ...layout,
  aim: {
    ...layout.aim,
    toe: { rule: 'as-set', degrees: degrees(toe) },
    tilt: { rule: 'as-set', degrees: degrees(tilt) },
    over: null,
  },
  stand: { ...layout.stand, lift },
});

/** From the axis, where it passes the head nearest, to the head; null where there is no such scene. */
function passed({ speaker, layout }: Scene, side: SideName): Vec3 | null {
  const pose = placeSide(speaker, layout, side);
  if (!pose.ok) return null;
  const toHead = subtract(headOf(layout.listener, layout.desk), pose.value.aimedPoint);
  return along(toHead, pose.value.forward, -dot(toHead, pose.value.forward));
}
