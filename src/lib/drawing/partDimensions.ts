import { extentOf } from '$lib/geometry/extent.ts';
import { apart, minus, outer } from '$lib/geometry/plane.ts';
import type { Point } from '$lib/geometry/point.ts';
import type { Part } from '$lib/workshop/part.ts';
import { linear } from './makeDimension.ts';
import { cornersOf } from './partCorners.ts';
import type { Dimension } from './view.ts';

type Shape = Pick<Part, 'outside' | 'inside'>;

/** Rows of dimension lines on one side that still leave the part room on a page. */
const MOST_ROWS = 6;
/** Places that differ by less, mm, are one: rounding. */
const SAME = 1e-6;
/** An edge whose ends differ by no more, mm, is level or plumb: no drawing shows the rest. */
const STRAIGHT = 0.05;

/**
 * Whether dimension lines from the part's lower left say all of it: sharp corners, round holes of one size, and no more of
 * either than rows have room for.
 */
export function isDimensioned(part: Shape): boolean {
  const corners = cornersOf(part.outside);
  const round = part.inside.flatMap((hole) => (hole.kind === 'circle' ? [hole.radius] : []));
  if (corners.some(({ radius }) => radius > 0) || round.length < part.inside.length) return false;
  if (round.some((radius) => Math.abs(radius - (round[0] ?? 0)) > SAME)) return false;
  const { across, left, right } = placesOf(part);
  return [across, left, right].every((places) => places.length <= MOST_ROWS);
}

/** Every corner and every centre, by its distance from the part's left end and from its lowest line. */
export function partDimensions(part: Shape): readonly Dimension[] {
  const extent = extentOf(part.outside);
  const { across, left, right } = placesOf(part);
  const corners = cornersOf(part.outside).map(({ at }) => at);
  const up = (side: 'left' | 'right', places: readonly Point[]): Dimension[] =>
    places.map((to, i) =>
      linear({
        id: `${side}-${i}`,
        subject: 'stand',
        from: nearest(corners, [extent[side], extent.bottom], 1),
        to,
        run: 'up',
        row: (side === 'left' ? -1 : 1) * (i + 1),
        value: to[1] - extent.bottom,
        defining: true,
        name: 'height over the lowest line',
      }),
    );
  return [
    ...across.map((to, i) =>
      linear({
        id: `across-${i}`,
        subject: 'stand',
        from: nearest(corners, [extent.left, extent.bottom], 0),
        to,
        run: 'across',
        row: -(i + 1),
        beside: 'from',
        value: to[0] - extent.left,
        defining: true,
        name: 'distance from the left end',
      }),
    ),
    ...up('left', left),
    ...up('right', right),
    ...slopes(part),
  ];
}

/** Of the corners that lie level with a place (or plumb over it, axis 0) the one nearest to it. */
function nearest(corners: readonly Point[], place: Point, axis: 0 | 1): Point {
  const inLine = corners.filter((corner) => Math.abs(corner[axis] - place[axis]) <= SAME);
  return inLine.reduce(
    (best, corner) => (apart(corner, place) < apart(best, place) ? corner : best),
    inLine[0] ?? place,
  );
}

/** The greatest sizes, in brackets: they follow from the points. */
export function overallDimensions({ outside }: Shape): readonly Dimension[] {
  const { left, right, bottom, top } = extentOf(outside);
  const size = (name: string, from: Point, to: Point, run: 'across' | 'up', value: number): Dimension =>
    linear({ id: name, subject: 'stand', from, to, run, row: run === 'across' ? -1 : 1, value, name });
  return [
    size('width', [left, bottom], [right, bottom], 'across', right - left),
    size('height', [right, bottom], [right, top], 'up', top - bottom),
  ];
}

/** What dimension lines lead to, each place once, the nearest first: along, and up on either side of the middle. */
function placesOf({ outside, inside }: Shape) {
  const { left, right, bottom } = extentOf(outside);
  const points = [
    ...cornersOf(outside).map(({ at }) => at),
    ...inside.flatMap((hole) => (hole.kind === 'circle' ? [hole.centre] : [])),
  ];
  const middle = (left + right) / 2;
  const high = once(points, 1, bottom);
  return {
    across: once(points, 0, left),
    left: high.filter(([x]) => x < middle),
    right: high.filter(([x]) => x >= middle),
  };
}

function once(points: readonly Point[], axis: 0 | 1, datum: number): readonly Point[] {
  return [...points]
    .sort((a, b) => a[axis] - b[axis])
    .filter((point, i, sorted) => point[axis] - (sorted[i - 1]?.[axis] ?? datum) > SAME && point[axis] - datum > SAME);
}

/** The part's slope, along itself: it follows from its ends. */
function slopes({ outside }: Shape): readonly Dimension[] {
  const edge = slopeOf(outside);
  return edge
    ? [
        linear({
          id: 'slope',
          subject: 'stand',
          ...edge,
          run: 'aligned',
          // Corners run counter-clockwise: outside is on the right of the way.
          row: -1,
          value: apart(edge.from, edge.to),
          name: 'length along the slope',
        }),
      ]
    : [];
}

/**
 * The longest edge that leans nearer to level than to plumb, in the order of corners; null where none does. Not one that
 * ends in a rounded inner corner: that is the room for a router’s bit.
 */
export function slopeOf(outside: Part['outside']): { readonly from: Point; readonly to: Point } | null {
  const corners = cornersOf(outside);
  const relieved = corners.map(
    ({ at, radius }, i) =>
      radius > 0 &&
      outer(minus(at, corners.at(i - 1)?.at ?? at), minus(corners[(i + 1) % corners.length]?.at ?? at, at)) < 0,
  );
  const sloping = corners.flatMap(({ at }, i) => {
    if (relieved[i] === true || relieved[(i + 1) % corners.length] === true) return [];
    const next = corners[(i + 1) % corners.length]?.at ?? at;
    const [run, rise] = [Math.abs(next[0] - at[0]), Math.abs(next[1] - at[1])];
    const leans = rise > STRAIGHT && rise < run;
    return leans ? [{ from: at, to: next }] : [];
  });
  return sloping.reduce<{ from: Point; to: Point } | null>(
    (longest, one) => (longest && apart(longest.from, longest.to) >= apart(one.from, one.to) ? longest : one),
    null,
  );
}

/** How wide the slots in an outline are, in the order of its corners, mm: each at least as deep on both sides as wide. */
export function slotWidths(outside: Part['outside']): readonly number[] {
  const corners = cornersOf(outside).map(({ at }) => at);
  const corner = (i: number): Point => corners[(i + corners.length) % corners.length] ?? [0, 0];
  const turnsIn = (i: number): boolean => outer(minus(corner(i), corner(i - 1)), minus(corner(i + 1), corner(i))) < 0;
  return corners.flatMap((at, i) => {
    const width = apart(at, corner(i + 1));
    const deep = Math.min(apart(corner(i - 1), at), apart(corner(i + 1), corner(i + 2)));
    return turnsIn(i) && turnsIn(i + 1) && deep >= width ? [width] : [];
  });
}
