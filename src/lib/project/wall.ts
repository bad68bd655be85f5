import { radians } from '$lib/geometry/angle.ts';
import type { Point } from '$lib/geometry/point.ts';
import type { Wall } from './project.ts';

/** A direction in plan by its bearing in degrees: 0 is straight ahead, 90 right. To the last digit along the axes. */
export function towards(bearing: number): Point {
  const quarters = (((bearing / 90) % 4) + 4) % 4;
  const axis = AXES[quarters];
  return axis ?? [Math.sin(radians(bearing)), Math.cos(radians(bearing))];
}

const AXES: readonly Point[] = [
  [0, 1],
  [1, 0],
  [0, -1],
  [-1, 0],
];

/** How far points reach in a direction from the origin, mm; negative where all of them lie behind it. */
export function reachOf([right, ahead]: Point, points: readonly Point[]): number {
  let most = -Infinity;
  for (const [x, y] of points) most = Math.max(most, x * right + y * ahead);
  return most;
}

/** What is left between points and a wall, mm; negative by how far they reach into it. */
export const gapToWall = ({ bearing, distance }: Wall, points: readonly Point[]): number =>
  distance - reachOf(towards(bearing), points);

/** The side of the desk that a wall is on. */
export type WallWay = 'front' | 'back' | 'left' | 'right';

/** Where a wall lies: behind the loudspeakers and half-way aside is `back`, behind the chair `front`. */
export function wayTo({ bearing }: Pick<Wall, 'bearing'>): WallWay {
  const [right, ahead] = towards(bearing);
  if (Math.abs(ahead) >= Math.abs(right) - HAIR) return ahead > 0 ? 'back' : 'front';
  return right > 0 ? 'right' : 'left';
}

/** Rounding of a bearing half-way between two ways. */
const HAIR = 1e-9;

/** A wall in a few words: `wall behind`, `left wall`, `wall “window”`. */
export const wallText = (name: string): string => texts[name] ?? `wall “${name}”`;

const texts: Readonly<Record<string, string>> = { behind: 'wall behind', left: 'left wall', right: 'right wall' };
