import type { SurfaceName } from '$lib/acoustics/surface.ts';
import type { Screen } from '$lib/acoustics/screens.ts';

const names: Readonly<Record<SurfaceName, string>> = {
  desk: 'The desk',
  wall: 'The wall behind',
  'left-wall': 'The wall at the left',
  'right-wall': 'The wall at the right',
  ceiling: 'The ceiling',
  monitor: 'The screen',
};

/** A surface at the beginning of a sentence; screens by their number, from 1. */
export const surfaceText = ({ surface, monitor }: { surface: SurfaceName; monitor: number | null }): string =>
  monitor === null ? names[surface] : `Screen ${monitor + 1}`;

export type Obstacle = Screen['name'];

const obstacles = {
  monitor: 'the screen',
  'left-cabinet': 'the left cabinet',
  'right-cabinet': 'the right cabinet',
} as const satisfies Record<Obstacle, string>;

/** What stands in a reflection’s way. */
export const obstacleText = (by: Obstacle): string => obstacles[by];
