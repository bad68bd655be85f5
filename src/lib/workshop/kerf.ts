import { edgesOf } from '$lib/geometry/edge.ts';
import { growContour } from '$lib/geometry/growContour.ts';
import { pointGap } from '$lib/geometry/edgeGap.ts';
import { failure, success, type Fault, type Result } from '$lib/project/fault.ts';
import type { Circle, Contour, Path } from '$lib/geometry/contour.ts';
import { asTyped, needs, says } from '$lib/project/sentence.ts';
import { engravingOf } from '$lib/workshop/lettering/engraving.ts';
import type { Part } from './part.ts';

/** What the middle of the beam follows to leave a part at its finished size. */
export interface CutPath {
  /** The part's outside grown by half the kerf, counter-clockwise as it was. */
  readonly outside: Path;
  /** Its holes and slots shrunk by half the kerf. */
  readonly inside: readonly (Path | Circle)[];
  /** Engraved, not cut: unchanged. */
  readonly engrave: readonly Contour[];
}

/**
 * The path of the beam's middle for one part. `kerf` is the full width that the beam removes, mm, 0 or more; the beam is
 * taken as round, so it leaves outside corners sharp and inside corners rounded by half the kerf. A hole or notch too
 * narrow for the beam is a fault at `/cutter/kerf` that names the part and the kerf that would still do.
 */
export function cutPath(part: Part, kerf: number): Result<CutPath> {
  const outside = growContour(part.outside, kerf / 2);
  const inside = part.inside.map((hole) => growContour(hole, -kerf / 2));
  const faults: Fault[] = [];
  if (outside === null) faults.push(tooWide(part, 'a notch', kerf, (width) => growContour(part.outside, width / 2)));
  part.inside.forEach((hole, i) => {
    if (inside[i] === null) faults.push(tooWide(part, 'a hole', kerf, (width) => growContour(hole, -width / 2)));
  });
  const cut = inside.filter((hole) => hole !== null);
  return outside === null || faults.length > 0
    ? failure(...faults)
    : success({ outside, inside: cut, engrave: engravingOf(part) });
}

/** How far the beam's edge comes from the finished outline at its furthest corner, mm: half the kerf, more at mitres. */
export function beamReach(part: Part, cut: CutPath, kerf: number): number {
  const edges = edgesOf(part.outside);
  const corners = cut.outside.vertices.map(({ x, y }) => Math.min(...edges.map((edge) => pointGap([x, y], edge))));
  return Math.max(kerf / 2, ...corners) + kerf / 2;
}

/** Halvings: enough for a thousandth of the widest kerf a project may hold. */
const STEPS = 14;

function tooWide(part: Part, what: string, kerf: number, grow: (width: number) => Contour | null): Fault {
  let [fits, fails] = [0, kerf];
  for (let step = 0; step < STEPS; step++) {
    const width = (fits + fails) / 2;
    if (grow(width) === null) fails = width;
    else fits = width;
  }
  const limit = Number((Math.floor(fits * 1000) / 1000).toFixed(3));
  return {
    pointer: '/cutter/kerf',
    message: needs(
      says`a kerf of at most ${asTyped(limit)} for ${what} in part "${part.name}"`,
      asTyped(kerf),
      'the beam or bit does not fit in',
    ),
  };
}
