import type { Vec3 } from '$lib/geometry/point.ts';
import type { Desk } from '$lib/project/project.ts';
import { bounce, type Bounce } from './bounce.ts';
import { surfacesOf, type Surface } from './surface.ts';

/** One reflection beside the direct sound. */
export interface Reflection {
  readonly surface: 'desk' | 'wall';
  /** Where it leaves the surface's plane, desk frame, mm. */
  readonly point: Vec3;
  /** Whether the surface is there at the point. */
  readonly lands: boolean;
  /** Reflected path less direct path, mm, 0 or more. */
  readonly pathDifference: number;
  /** Behind the direct sound, ms. */
  readonly delay: number;
  /** dB re the direct sound, 0 or less: by spreading alone, no loss in the surface, no directivity. */
  readonly relativeLevel: number;
  /** First frequency that arrives half a wave late, c/(2Δ), Hz; null where the paths are equally long. */
  readonly firstNotch: number | null;
}

/**
 * The reflections of a source point in the desk's top and in the wall behind it, as heard at the head: the desk first.
 * `speed` is the speed of sound, m/s. Specular, from the mirror image; what stands in the way is not looked at.
 *
 * A surface gives no reflection, and no entry, when the source or the head is on its wrong side (an ear under the desk's
 * top, a loudspeaker beyond the wall), and the wall none when its distance is not given. A reflection whose point misses
 * the surface is listed with `lands: false`.
 */
export const reflections = (desk: Desk, source: Vec3, head: Vec3, speed: number): Reflection[] =>
  surfacesOf(desk).flatMap((surface) => {
    const path = bounce(surface.plane, source, head);
    return path ? [heard(surface, path, speed)] : [];
  });

function heard(surface: Surface<'desk' | 'wall'>, { point, direct, excess }: Bounce, speed: number): Reflection {
  // A millimetre at one metre a second takes a millisecond.
  const delay = excess / speed;
  const notch = 1000 / (2 * delay);
  return {
    surface: surface.name,
    point,
    lands: surface.holds(point),
    pathDifference: excess,
    delay,
    relativeLevel: spreading(direct, excess),
    firstNotch: Number.isFinite(notch) ? notch : null,
  };
}

/** 20·lg(direct / (direct + excess)) dB, with `log1p` so that a small excess keeps its digits. */
const spreading = (direct: number, excess: number): number => (-20 / Math.LN10) * Math.log1p(excess / direct);
