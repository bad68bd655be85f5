import type { Point } from '$lib/geometry/point.ts';
import type { StandSettings } from '$lib/project/project.ts';

/**
 * The cabinet's bottom, seen from the side, and what the settings measure from it. Lengths along the slope are `s`, from
 * the cabinet's front bottom edge rearwards; lengths square to it are `w`, upwards.
 */
export interface Slope {
  /** Radians, positive with the front high; within ±60° by the project's ranges. */
  readonly tilt: number;
  /** Where the low end is. */
  readonly low: 'front' | 'rear';
  /** The wood's top: `s` at its front and rear end, and its `w` (0 or less: a pad lies on it). */
  readonly front: number;
  readonly rear: number;
  readonly top: number;
  /** Height of the wood's base over the desk: that of the feet under it. */
  readonly base: number;
  /** The point at (s, w), in (u, z): u back from the mark along the toed direction, z over the desk. */
  readonly at: (s: number, w: number) => Point;
}

/** @param lift Height of the cabinet's lowest bottom edge over the desk, mm. */
export function slopeOf(settings: StandSettings, depth: number, tilt: number, lift: number): Slope {
  const low = tilt >= 0 ? 'rear' : 'front';
  const lip = settings.stop?.thickness ?? 0;
  const [cos, sin] = [Math.cos(tilt), Math.sin(tilt)];
  // Counted from the low edge, so that the lift comes out untouched by rounding there.
  const rise = low === 'rear' ? (s: number) => (depth - s) * sin : (s: number) => -s * sin;
  return {
    tilt,
    low,
    front: 0 - Math.max(settings.frontMargin, low === 'front' ? lip : 0),
    rear: depth + Math.max(settings.rearMargin, low === 'rear' ? lip : 0),
    top: 0 - settings.pad,
    base: settings.feet,
    at: (s, w) => [s * cos + w * sin, lift + rise(s) + w * cos],
  };
}
