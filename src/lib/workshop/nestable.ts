import { around } from '$lib/geometry/extent.ts';
import { clearRight, noFit } from './noFit.ts';
import { convexPieces, type Convex } from './convexPieces.ts';
import { norm, minus } from '$lib/geometry/plane.ts';
import { extentOf, type Extent } from '$lib/geometry/extent.ts';
import { placedContour } from './placed.ts';
import { signedArea } from '$lib/geometry/area.ts';
import type { Part } from './part.ts';
import type { Path } from '$lib/geometry/contour.ts';
import type { Point } from '$lib/geometry/point.ts';

/** One copy in a rectangle: the lower left corner of its bounding box, and how many quarter turns it has made. */
export interface Spot {
  readonly x: number;
  readonly y: number;
  readonly quarters: number;
}

/**
 * A part as seen when rows are laid: at some turn, or mirrored in the diagonal so that columns can be laid as rows. Its
 * copies stand upright or turned by half a turn, each with the lower left of its bounding box as its place.
 */
export interface View {
  readonly width: number;
  readonly height: number;
  /** Quarter turns of the upright copy. */
  readonly quarters: number;
  /** Whether x and y have changed places. */
  readonly swapped: boolean;
  /** How far right of a copy the next one at the same turn and height must stand to be clear of it. */
  readonly step: number;
  /**
   * How far right of an upright copy a half-turned one, `rise` mm higher, must stand to be clear of it; −Infinity:
   * anywhere. With `halfFirst` the upright copy follows the half-turned one.
   */
  readonly advance: (halfFirst: boolean, rise: number) => number;
}

/** A part with everything that arranging it asks again and again. */
export interface Nestable {
  readonly part: Part;
  readonly views: readonly View[];
  /** The part's bounding box, not turned. */
  readonly extent: Extent;
  readonly width: number;
  readonly height: number;
  /** Wood that one copy takes at the very least, its share of the spacing included, mm². */
  readonly claim: number;
}

/** `spacing`: the least gap between copies, mm. Without quarter turns only half turns are used. */
export function nestable(part: Part, spacing: number, quarterTurns: boolean): Nestable {
  const extent = extentOf(part.outside);
  const turns = quarterTurns ? [0, 1] : [0];
  return {
    part,
    extent,
    width: extent.right - extent.left,
    height: extent.top - extent.bottom,
    claim: claimOf(convexPieces(part.outside), signedArea(part.outside), spacing),
    views: turns.flatMap((quarters) => {
      const outline = turned(part.outside, quarters);
      return [viewOf(outline, quarters, false, spacing), viewOf(outline, quarters, true, spacing)];
    }),
  };
}

const turned = (outline: Path, quarters: number): Path =>
  placedContour(outline, { x: 0, y: 0, turn: (quarters * Math.PI) / 2 });

function viewOf(outline: Path, quarters: number, swapped: boolean, spacing: number): View {
  const { left, bottom, right, top } = extentOf(outline);
  const [width, height] = swapped ? [top - bottom, right - left] : [right - left, top - bottom];
  const upright = convexPieces(outline).map((piece) => {
    const corners = piece.map(([x, y]): Point => (swapped ? [y - bottom, x - left] : [x - left, y - bottom]));
    return swapped ? corners.reverse() : corners;
  });
  const half = upright.map((piece) => piece.map(([x, y]): Point => [width - x, height - y]));
  const [uprightFirst, halfFirst] = [pairs(upright, half), pairs(half, upright)];
  const clear = (polygons: readonly Convex[], rise: number): number =>
    Math.max(...polygons.map((polygon) => clearRight(polygon, rise, spacing)));
  const step = clear(pairs(upright, upright), 0);
  const advance: View['advance'] = (first, rise) => clear(first ? halfFirst : uprightFirst, rise);
  return { width, height, quarters, swapped, step, advance };
}

const pairs = (a: readonly Convex[], b: readonly Convex[]): Convex[] =>
  a.flatMap((first) => b.map((second) => noFit(first, second)));

/** The area of the part grown by half the spacing: for a convex part by Steiner's formula, else Brunn and Minkowski's bound. */
function claimOf(pieces: readonly Convex[], area: number, spacing: number): number {
  const [only, ...others] = pieces;
  if (only === undefined || others.length > 0) return (Math.sqrt(area) + (Math.sqrt(Math.PI) * spacing) / 2) ** 2;
  const perimeter = only.reduce((sum, point, i) => sum + norm(minus(only[(i + 1) % only.length] ?? point, point)), 0);
  return area + (perimeter * spacing) / 2 + (Math.PI * spacing ** 2) / 4;
}

/** Where the part's own origin lies when the bounding box of the turned part stands at 0, 0. */
export function originOf(item: Nestable, quarters: number): Point {
  const { left, bottom } = around(extentCorners(item.extent).map((corner) => turnedPoint(corner, quarters)));
  return [-left || 0, -bottom || 0];
}

const extentCorners = ({ left, bottom, right, top }: Extent): Point[] => [
  [left, bottom],
  [right, top],
];

const turnedPoint = ([x, y]: Point, quarters: number): Point => {
  if (quarters === 0) return [x, y];
  if (quarters === 1) return [-y, x];
  return quarters === 2 ? [-x, -y] : [y, -x];
};
