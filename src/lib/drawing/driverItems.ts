import { dot, type Point, type Vec3 } from '$lib/geometry/point.ts';
import type { SidePlan } from '$lib/solution/document.ts';
import type { SideName, Speaker } from '$lib/project/project.ts';
import { cabinetFrame, type CabinetFrame } from './cabinetFrame.ts';
import type { Projection } from './projection.ts';
import type { Item } from './view.ts';

/** Corners of the polygon that stands for a circle: 0.1 % of the radius from the true one at most. */
const STEPS = 72;

/** A circle on the baffle as it is seen, counter-clockwise or clockwise as the baffle faces the eye or not. */
function foreshortened(centre: Vec3, radius: number, { inboard, up }: CabinetFrame, { flat }: Projection): Point[] {
  return CIRCLE.map(([cos, sin]) => {
    const across = radius * cos;
    const over = radius * sin;
    return flat({
      x: centre.x + inboard.x * across + up.x * over,
      y: centre.y + inboard.y * across + up.y * over,
      z: centre.z + inboard.z * across + up.z * over,
    });
  });
}

/** Corners of the polygon on a circle of radius 1. */
const CIRCLE: readonly Point[] = Array.from({ length: STEPS }, (_, step) => {
  const angle = (2 * Math.PI * step) / STEPS;
  return [Math.cos(angle), Math.sin(angle)];
});

/** The drivers of one cabinet: whole where the baffle faces the eye, dashed where it is turned away. */
export function driverItems(name: SideName, side: SidePlan, speaker: Speaker, projection: Projection): Item[] {
  const frame = cabinetFrame(side);
  const faces = dot(side.axis, projection.eye) > 0;
  return side.drivers.flatMap((driver, index): Item[] => {
    const radius = (speaker.drivers[index]?.diameter ?? 0) / 2;
    return [
      {
        kind: 'outline',
        id: `driver-${name}-${index}`,
        subject: 'driver',
        pen: faces ? 'narrow' : 'hidden',
        points: foreshortened(driver.position, radius, frame, projection),
        closed: true,
        filled: faces,
      },
    ];
  });
}
