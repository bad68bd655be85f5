import type { Path } from '$lib/geometry/contour.ts';
import { around, type Extent } from '$lib/geometry/extent.ts';
import { flattened } from '$lib/geometry/flattened.ts';
import { isConvex, type Outline } from '$lib/geometry/gapWithin.ts';
import type { Point } from '$lib/geometry/point.ts';
import { deskPath } from './deskPath.ts';
import type { DeskOutline } from './project.ts';

/**
 * The desk's top from above, in the desk's frame: the origin is the point of its front edge straight before the listener's
 * place. mm, counter-clockwise.
 */
export interface DeskShape extends Outline {
  /** With its arcs. */
  readonly path: Path;
  /** With chords in place of arcs, `SAGITTA` from them at most. */
  readonly points: readonly Point[];
  /** The same for the sound, `HEARD` from the arcs at most. */
  readonly plate: readonly Point[];
  readonly extent: Extent;
  /** From the front edge straight back over the middle line to the next edge, mm. */
  readonly depth: number;
}

/** How far a chord lies from its arc at most, mm: half of what a pencil line is wide. */
const SAGITTA = 0.1;

/** mm: a hundredth of the shortest wave of 4 kHz, and under a tenth of that of 20 kHz. */
const HEARD = 1;

const known = new WeakMap<DeskOutline, DeskShape>();

/** The shape of a desk; one outline always gives the same object. */
export function deskShape({ outline }: { readonly outline: DeskOutline }): DeskShape {
  const before = known.get(outline);
  if (before) return before;
  const path = deskPath(outline);
  const points = flattened(path, SAGITTA);
  const plate = path.vertices.some(({ bulge }) => bulge !== 0) ? flattened(path, HEARD) : points;
  const shape = { path, points, plate, convex: isConvex(points), extent: around(points), depth: depthOf(points) };
  known.set(outline, shape);
  return shape;
}

/** What is nearer to the front edge than this is the front edge, mm. */
const FRONT = 0.5;

/** Where the middle line leaves the desk again. */
function depthOf(points: readonly Point[]): number {
  const crossings = points.flatMap(([x, y], i) => {
    const [toX, toY] = points[(i + 1) % points.length] ?? [x, y];
    return x > 0 === toX > 0 ? [] : [y + ((toY - y) * -x) / (toX - x)];
  });
  // The front edge itself is the first.
  return Math.min(...crossings.filter((y) => y > FRONT));
}
