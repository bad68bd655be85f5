import { around } from '$lib/geometry/extent.ts';
import { clearRight, noFit } from './noFit.ts';
import { convexPieces, type Convex } from './convexPieces.ts';
import { norm, minus } from '$lib/geometry/plane.ts';
import { extentOf, type Extent } from '$lib/geometry/extent.ts';
import { FIT, type Room, type View } from './rows.ts';
import { once } from '$lib/project/once.ts';
import { placedContour } from './placed.ts';
import { signedArea } from '$lib/geometry/area.ts';
import type { Part } from '$lib/workshop/part.ts';
import type { Path } from '$lib/geometry/contour.ts';
import type { Point } from '$lib/geometry/point.ts';

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
    claim: claimOf(part, spacing),
    views: turns.flatMap((quarters) => {
      const outline = once(() => turned(part.outside, quarters));
      const bounds = turnedExtent(extent, quarters);
      return [false, true].map((swapped) => viewOf(outline, bounds, quarters, swapped, spacing));
    }),
  };
}

/** Whether a room holds a copy at a turn allowed to it. */
export const fitsRoom = ({ views }: Nestable, { width, height }: Room): boolean =>
  views.some((view) => !view.swapped && view.width <= width + FIT && view.height <= height + FIT);

const turned = (outline: Path, quarters: number): Path =>
  placedContour(outline, { x: 0, y: 0, turn: (quarters * Math.PI) / 2 });

function viewOf(
  outline: () => Path,
  { left, bottom, right, top }: Extent,
  quarters: number,
  swapped: boolean,
  spacing: number,
): View {
  const [width, height] = swapped ? [top - bottom, right - left] : [right - left, top - bottom];
  const upright = once(() =>
    convexPieces(outline()).map((piece) => {
      const corners = piece.map(([x, y]): Point => (swapped ? [y - bottom, x - left] : [x - left, y - bottom]));
      return swapped ? corners.reverse() : corners;
    }),
  );
  const half = once(() => upright().map((piece) => piece.map(([x, y]): Point => [width - x, height - y])));
  const uprightFirst = once(() => pairs(upright(), half()));
  const halfFirst = once(() => pairs(half(), upright()));
  const clear = (polygons: readonly Convex[], rise: number): number =>
    Math.max(...polygons.map((polygon) => clearRight(polygon, rise, spacing)));
  const step = once(() => clear(pairs(upright(), upright()), 0));
  return {
    width,
    height,
    quarters,
    swapped,
    get step() {
      return step();
    },
    advance: (first, rise) => clear(first ? halfFirst() : uprightFirst(), rise),
  };
}

const pairs = (a: readonly Convex[], b: readonly Convex[]): Convex[] =>
  a.flatMap((first) => b.map((second) => noFit(first, second)));

/** The area of the part grown by half the spacing: for a convex part by Steiner's formula, else Brunn and Minkowski's bound. */
export function claimOf({ outside }: Part, spacing: number): number {
  const [only, ...others] = convexPieces(outside);
  const area = signedArea(outside);
  if (only === undefined || others.length > 0) return (Math.sqrt(area) + (Math.sqrt(Math.PI) * spacing) / 2) ** 2;
  const perimeter = only.reduce((sum, point, i) => sum + norm(minus(only[(i + 1) % only.length] ?? point, point)), 0);
  return area + (perimeter * spacing) / 2 + (Math.PI * spacing ** 2) / 4;
}

/** Where the part's own origin lies when the bounding box of the turned part stands at 0, 0. */
export function originOf(item: Nestable, quarters: number): Point {
  const { left, bottom } = turnedExtent(item.extent, quarters);
  return [-left || 0, -bottom || 0];
}

/** The bounding box of something that has made quarter turns about the origin, from the one it had before. */
export const turnedExtent = ({ left, bottom, right, top }: Extent, quarters: number): Extent =>
  around([turnedPoint([left, bottom], quarters), turnedPoint([right, top], quarters)]);

const turnedPoint = ([x, y]: Point, quarters: number): Point => {
  if (quarters === 0) return [x, y];
  if (quarters === 1) return [-y, x];
  return quarters === 2 ? [-x, -y] : [y, -x];
};
