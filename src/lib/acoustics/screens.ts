import { distance, type Vec3 } from '$lib/geometry/point.ts';
import { stretchInside, type Solid } from '$lib/geometry/solid.ts';
import type { SideName } from '$lib/project/project.ts';

/** A body that can stand in the way of sound. */
export interface Screen {
  readonly name: 'monitor' | 'surface' | 'left-cabinet' | 'right-cabinet';
  /** Which of the monitors, from 0; null for anything else. */
  readonly monitor: number | null;
  /** Which of the layout's surfaces, from 0; absent for anything else. */
  readonly surface?: number;
  readonly body: Solid;
  /** Its narrower side as seen from the front, mm: what a wave has to go round. */
  readonly width: number;
}

/** What a path meets on its way: bodies to look out for, and the loudspeaker it starts from. */
export interface Way {
  readonly screens: readonly Screen[];
  readonly side: SideName;
}

/**
 * A path counts as crossing a body when it runs inside for more than this, mm: one that leaves the body's own face or
 * bounces off it only touches, but for rounding.
 */
const TOUCHING = 1e-6;

/** The widest body that a straight path crosses, or null. */
export function screenBetween(screens: readonly Screen[], from: Vec3, to: Vec3): Screen | null {
  let widest: Screen | null = null;
  for (const screen of screens) {
    if (widest !== null && screen.width <= widest.width) continue;
    const inside = stretchInside(screen.body, from, to);
    if (inside && (inside[1] - inside[0]) * distance(from, to) > TOUCHING) widest = screen;
  }
  return widest;
}

/** The wider one of what stands in the way before and after. */
export const widerOf = (a: Screen | null, b: Screen | null): Screen | null =>
  a && b ? (b.width > a.width ? b : a) : (a ?? b);

/** The bodies in the way of sound that leaves a baffle: all but its own cabinet, which counts as its baffle does. */
export const othersThan = ({ screens, side }: Way): Screen[] =>
  screens.filter(({ name }) => name !== `${side}-cabinet`);
