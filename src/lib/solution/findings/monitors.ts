import { between, dot, subtract, type Vec3 } from '$lib/geometry/point.ts';
import { overlapDepth, stretchInside } from '$lib/geometry/solid.ts';
import { asMm } from '$lib/project/sentence.ts';
import { facesOf, flatFace, type ScreenFace } from '$lib/project/screenFaces.ts';
import { sideNames } from '$lib/project/project.ts';
import type { Finding } from './finding.ts';
import type { PlacedCheck } from './check.ts';

/** Bodies that touch overlap by the dust of rounding; mm. */
const TOUCHING = 1e-6;

/** A cabinet and a monitor in one place. */
const monitorCollision: PlacedCheck = ({ cabinets, monitors }) =>
  sideNames.flatMap((side) =>
    monitors.flatMap((monitor, index): Finding[] => {
      const depth = Math.max(...monitor.map((body) => overlapDepth(cabinets[side], body)));
      if (depth <= TOUCHING) return [];
      return [
        {
          code: 'monitor-collision',
          level: 'fault',
          sides: [side],
          subject: { monitor: index },
          facts: { monitors: monitors.length },
          quantities: { depth: asMm(depth) },
          value: depth,
          limit: 0,
          unit: 'mm',
          source: 'geometry',
        },
      ];
    }),
  );

/** How far inside a face's outline, seen from its front, a point lies; mm, negative outside. */
function inside({ middle, across, up, width, height }: ScreenFace, at: Vec3): number {
  const from = subtract(at, middle);
  const over = dot(from, up);
  return Math.min(width / 2 - Math.abs(dot(from, across)), over, height - over);
}

/** A monitor between a driver and the head. */
const sightLine: PlacedCheck = ({ layout, poses, monitors, head }) =>
  sideNames.flatMap((side) =>
    poses[side].drivers.flatMap(({ driver, position }) =>
      layout.monitors.flatMap((monitor, index): Finding[] => {
        const crossed = (monitors[index] ?? []).flatMap((body, strip) => {
          const stretch = stretchInside(body, position, head);
          return stretch ? [{ stretch, strip }] : [];
        });
        if (crossed.length === 0) return [];
        const faces = facesOf(monitor);
        const depths = crossed.flatMap(({ stretch, strip }) =>
          stretch.map((part) => inside(faces[strip] ?? flatFace(monitor), between(position, head, part))),
        );
        const hidden = Math.max(...depths, 0);
        return [
          {
            code: 'monitor-in-sight-line',
            level: 'caution',
            sides: [side],
            subject: { monitor: index, driver: driver.name },
            facts: { monitors: monitors.length },
            quantities: { inside: asMm(hidden) },
            value: hidden,
            limit: 0,
            unit: 'mm',
            source: 'geometry',
          },
        ];
      }),
    ),
  );

/** In the order in which they are told. */
export const screenChecks: readonly PlacedCheck[] = [monitorCollision, sightLine];
