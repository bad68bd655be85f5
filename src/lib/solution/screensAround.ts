import type { Screen } from '$lib/acoustics/screens.ts';
import type { Solid } from '$lib/geometry/solid.ts';
import { monitorHull, plateBody } from '$lib/layout/bodies.ts';
import { sideNames, type Layout, type SideName, type Speaker } from '$lib/project/project.ts';

/** Everything that can stand in the way of sound: the screens, the plates of surfaces, and both cabinets. */
export const screensAround = (
  speaker: Speaker,
  layout: Layout,
  cabinets: Readonly<Record<SideName, Solid>>,
): Screen[] => [
  ...layout.monitors.map((monitor, index): Screen => ({
    name: 'monitor',
    monitor: index,
    body: monitorHull(monitor),
    width: Math.min(monitor.width, monitor.height),
  })),
  ...layout.surfaces.map((surface, index): Screen => ({
    name: 'surface',
    monitor: null,
    surface: index,
    body: plateBody(surface, layout.desk),
    width: Math.min(surface.width, surface.depth),
  })),
  ...sideNames.map((side): Screen => ({
    name: `${side}-cabinet`,
    monitor: null,
    body: cabinets[side],
    width: Math.min(speaker.width, speaker.height),
  })),
];
