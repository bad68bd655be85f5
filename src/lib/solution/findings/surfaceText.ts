import type { SurfaceName } from '$lib/acoustics/surface.ts';
import { surfaceCalled } from '$lib/project/surface.ts';
import { wallText } from '$lib/project/wall.ts';
import type { Screen } from '$lib/acoustics/screens.ts';

/** A surface in a few words. */
export function surfaceName(surface: SurfaceName): string {
  if (surface === 'monitor') return 'screen';
  if (surface === 'desk' || surface === 'ceiling') return surface;
  return surface.startsWith('surface:')
    ? `plate of ${surfaceCalled(surface.slice('surface:'.length))}`
    : wallText(surface.slice('wall:'.length));
}

/** A surface at the beginning of a sentence; screens by their number, from 1. */
export const surfaceText = ({ surface, monitor }: { surface: SurfaceName; monitor: number | null }): string =>
  monitor === null ? `The ${surfaceName(surface)}` : `Screen ${monitor + 1}`;

export type Obstacle = Screen['name'];

const obstacles = {
  monitor: 'the screen',
  surface: 'a shelf or plate',
  'left-cabinet': 'the left cabinet',
  'right-cabinet': 'the right cabinet',
} as const satisfies Record<Obstacle, string>;

/** What stands in a reflection’s way. */
export const obstacleText = (by: Obstacle): string => obstacles[by];
