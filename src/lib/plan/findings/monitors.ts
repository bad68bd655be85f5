import { between, type Vec3 } from '$lib/geometry/point.ts';
import { overlapDepth, stretchInside } from '$lib/geometry/solid.ts';
import { sideNames, type Monitor } from '$lib/project/project.ts';
import type { Finding } from '$lib/plan/document.ts';
import type { PlacedCheck } from './check.ts';
import { mmText } from './say.ts';

/** Bodies that touch overlap by the dust of rounding; mm. */
const TOUCHING = 1e-6;

const called = (index: number, count: number): string => (count === 1 ? 'the monitor' : `monitor ${index + 1}`);

/** A cabinet and a monitor in one place. */
export const monitorCollision: PlacedCheck = ({ cabinets, monitors }) =>
  sideNames.flatMap((side) =>
    monitors.flatMap((monitor, index): Finding[] => {
      const depth = overlapDepth(cabinets[side], monitor);
      if (depth <= TOUCHING) return [];
      return [
        {
          code: 'monitor-collision',
          level: 'fault',
          side,
          text: `The ${side} cabinet and ${called(index, monitors.length)} share ${mmText(depth)} of the same place. Move the mark outwards or forwards.`,
          value: depth,
          limit: 0,
          unit: 'mm',
          source: 'the geometry itself',
        },
      ];
    }),
  );

/** How far inside the monitor's outline, seen from the front, a point lies; mm, negative outside. */
const inside = ({ x, width, bottom, height }: Monitor, at: Vec3): number =>
  Math.min(width / 2 - Math.abs(at.x - x), at.z - bottom, bottom + height - at.z);

/** A monitor between a driver and the head. */
export const sightLine: PlacedCheck = ({ layout, poses, monitors, head }) =>
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
            side,
            text: `From the head, ${called(index, monitors.length)} hides the ${side} ${driver.name}: the line passes ${mmText(hidden)} inside its edge. Move the mark outwards or forwards, or the monitor back.`,
            value: hidden,
            limit: 0,
            unit: 'mm',
            source: 'the geometry itself',
          },
        ];
      }),
    ),
  );
