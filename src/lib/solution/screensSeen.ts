import { degrees } from '$lib/geometry/angle.ts';
import { along, angleBetween, distance, subtract, type Vec3 } from '$lib/geometry/point.ts';
import type { Monitor } from '$lib/project/project.ts';
import { bendOf, flatFace } from '$lib/project/screenFaces.ts';
import type { Plan } from './document.ts';

/** A screen as it is seen from the middle between the ears, which stands for the eyes. */
export interface ScreenSeen {
  /** Middle of its face, and half-way up its left and right end. mm. */
  readonly middle: Vec3;
  readonly left: Vec3;
  readonly right: Vec3;
  /** To the middle of its face, mm. */
  readonly distance: number;
  /** Between the directions to its two ends, degrees, 0…180. */
  readonly angle: number;
}

/** Every screen as the planned head sees it, in the order of the project. */
export const screensSeen = ({ layout, head }: Pick<Plan, 'layout' | 'head'>): readonly ScreenSeen[] =>
  layout.monitors.map((monitor) => {
    const { middle, left, right } = placesOf(monitor);
    const angle = degrees(angleBetween(subtract(left, head), subtract(right, head)));
    return { middle, left, right, distance: distance(middle, head), angle };
  });

function placesOf(monitor: Monitor): Pick<ScreenSeen, 'middle' | 'left' | 'right'> {
  const { middle, across, up, width, height } = flatFace(monitor);
  const bend = bendOf(monitor);
  const halfUp = (point: Vec3): Vec3 => along(point, up, height / 2);
  return {
    middle: halfUp(middle),
    left: halfUp(bend?.[0]?.point ?? along(middle, across, -width / 2)),
    right: halfUp(bend?.at(-1)?.point ?? along(middle, across, width / 2)),
  };
}
