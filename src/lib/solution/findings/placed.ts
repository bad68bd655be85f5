import { speedOfSound } from '$lib/acoustics/air.ts';
import { sixSided } from '$lib/geometry/solid.ts';
import { monitorBodies } from '$lib/layout/bodies.ts';
import { headOf } from '$lib/layout/ears.ts';
import { placeSide } from '$lib/layout/place.ts';
import { placeFaults } from '$lib/layout/soundness.ts';
import { triangleOf } from '$lib/layout/triangle.ts';
import type { Finding } from './finding.ts';
import type { Layout, Project, Speaker } from '$lib/project/project.ts';
import { asStood } from '$lib/project/stood.ts';
import { placedChecks } from './all.ts';
import type { Placed } from './check.ts';

/** What follows from where both loudspeakers are, for the checks and the plan. */
export const placedOf = (
  speaker: Speaker,
  layout: Layout,
  { poses, cabinets }: Pick<Placed, 'poses' | 'cabinets'>,
): Placed => {
  const head = headOf(layout.listener, layout.desk);
  return {
    speaker,
    layout,
    head,
    speedOfSound: speedOfSound(layout.air.temperature),
    triangle: triangleOf(poses.left.aimedPoint, poses.right.aimedPoint, head),
    poses,
    cabinets,
    monitors: layout.monitors.map(monitorBodies),
  };
};

/**
 * Those of a plan's findings that hang on where things are and not on the stands, which take most of a plan's time: to
 * reject a place at a glance. In the order of the checks; null where no plan can be had.
 */
export function placedFindings(project: Project, layout: Layout): Finding[] | null {
  const speaker = asStood(project.speaker);
  const [left, right] = [placeSide(speaker, layout, 'left'), placeSide(speaker, layout, 'right')];
  if (!left.ok || !right.ok) return null;
  const cabinets = { left: sixSided(left.value.cabinet), right: sixSided(right.value.cabinet) };
  if (placeFaults(layout, cabinets).length > 0) return null;
  const placed = placedOf(speaker, layout, { poses: { left: left.value, right: right.value }, cabinets });
  return placedChecks.flatMap((check) => check(placed));
}
