import type { Circle, Path } from '$lib/geometry/contour.ts';
import { extentOf } from '$lib/geometry/extent.ts';
import type { Printer } from '$lib/project/project.ts';
import { SLACK } from '$lib/stand/slack.ts';

/** What a body takes of the bed, mm. */
export interface Plan {
  readonly x: number;
  readonly y: number;
}

export function planOf(...contours: readonly (Path | Circle)[]): Plan {
  const { left, bottom, right, top } = extentOf(...contours);
  return { x: right - left, y: top - bottom };
}

/** Whether it lies on the bed, as drawn or after a quarter turn. */
export const onBed = ({ x, y }: Plan, { bed }: Pick<Printer, 'bed'>): boolean =>
  (x <= bed.x + SLACK && y <= bed.y + SLACK) || (x <= bed.y + SLACK && y <= bed.x + SLACK);
