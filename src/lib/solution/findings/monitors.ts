import { between, type Vec3 } from '$lib/geometry/point.ts';
import { overlapDepth, stretchInside } from '$lib/geometry/solid.ts';
import { asMm } from '$lib/project/sentence.ts';
import { sideNames, type Monitor } from '$lib/project/project.ts';
import type { Finding } from './finding.ts';
import type { PlacedCheck } from './check.ts';

/** Bodies that touch overlap by the dust of rounding; mm. */
const TOUCHING = 1e-6;

/** A cabinet and a monitor in one place. */
const monitorCollision: PlacedCheck = ({ cabinets, monitors }) =>
  sideNames.flatMap((side) =>
    monitors.flatMap((monitor, index): Finding[] => {
      const depth = overlapDepth(cabinets[side], monitor);
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

/** How far inside the monitor's outline, seen from the front, a point lies; mm, negative outside. */
const inside = ({ x, width, bottom, height }: Monitor, at: Vec3): number =>
  Math.min(width / 2 - Math.abs(at.x - x), at.z - bottom, bottom + height - at.z);

/** A monitor between a driver and the head. */
const sightLine: PlacedCheck = ({ layout, poses, monitors, head }) =>
  sideNames.flatMap((side) =>
    poses[side].drivers.flatMap(({ driver, position }) =>
      layout.monitors.flatMap((monitor, index): Finding[] => {
        const body = monitors[index];
        const stretch = body && stretchInside(body, position, head);
        if (!stretch) return [];
        const hidden = Math.max(...stretch.map((part) => inside(monitor, between(position, head, part))), 0);
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
