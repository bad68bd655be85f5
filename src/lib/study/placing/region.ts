import { contours } from 'd3';
import { rootBetween } from '$lib/geometry/root.ts';
import type { Point } from '$lib/geometry/point.ts';
import type { Span } from './span.ts';

/** A patch of marks: its outline counter-clockwise, and the holes in it clockwise; mm. No ring repeats its first point. */
export interface Region {
  readonly outline: readonly Point[];
  readonly holes: readonly (readonly Point[])[];
}

/** A rectangle of two numbers, and where the marks lie that they tell. */
interface Patch {
  readonly run: Span;
  readonly across: Span;
  /** 0 or more where the mark will do, a continuous function. */
  readonly room: (run: number, across: number) => number;
  readonly mark: (run: number, across: number) => Point;
}

/** Steps along and across: what is smaller than a step may be passed over. */
const ALONG = 24;
const ACROSS = 180;

/**
 * Where marks will do, as patches bounded by points that lie exactly on the boundary, straight in between: with a degree
 * from point to point, and 1 m to the target, that is 0.04 mm off a circle at the most.
 */
export function regionsOf({ run, across, room, mark }: Patch): Region[] {
  const place = ({ from, to }: Span, i: number, count: number): number => (i >= count ? to : from + ((to - from) * i) / count); // prettier-ignore
  const at = (i: number, j: number) => [place(run, i, ALONG), place(across, j, ACROSS)] as const;
  const [columns, rows] = [ALONG + 1, ACROSS + 1];
  const values = Array.from({ length: columns * rows }, (_, index) => room(...at(index % columns, Math.floor(index / columns)))); // prettier-ignore
  const valueAt = (i: number, j: number): number => values[j * columns + i] ?? -1;
  // Vertices lie half a step off the grid: on an edge between two of its points, or half a step beyond its rim.
  const onGrid = (x: number, most: number): number => Math.min(most, Math.max(0, x - 0.5));
  const refined = ([x = 0, y = 0]: readonly number[]): Point => {
    const [i, j] = [onGrid(x, ALONG), onGrid(y, ACROSS)];
    const [low, high] = [Math.floor(i), Math.ceil(i)];
    const [down, up] = [Math.floor(j), Math.ceil(j)];
    const begins = at(low, down);
    const ends = at(high, up);
    const [one, other] = [valueAt(low, down), valueAt(high, up)];
    if (low === high && down === up) return mark(...begins);
    const between = (t: number) => [begins[0] + t * (ends[0] - begins[0]), begins[1] + t * (ends[1] - begins[1])] as const; // prettier-ignore
    if (one < 0 === other < 0) return mark(...(one < 0 ? ends : begins));
    return mark(...between(rootBetween((t) => room(...between(t)), 0, 1) ?? 0));
  };
  const { coordinates } = contours().size([columns, rows]).smooth(false).contour(values, 0);
  return coordinates.flatMap((rings): Region[] => {
    const [outline, ...holes] = rings.map((ring) => distinct(ring.slice(1).map(refined)));
    if (!outline || outline.length < 3) return [];
    return [{ outline: turned(outline, 1), holes: holes.filter(({ length }) => length >= 3).map((hole) => turned(hole, -1)) }]; // prettier-ignore
  });
}

const distinct = (ring: readonly Point[]): Point[] =>
  ring.filter((point, i) => {
    const before = ring[(i || ring.length) - 1];
    return before?.[0] !== point[0] || before[1] !== point[1];
  });

/** A ring in one sense round: 1 counter-clockwise, −1 clockwise. */
function turned(ring: readonly Point[], sense: 1 | -1): readonly Point[] {
  const twice = ring.reduce((sum, [x, y], i) => {
    const [nextX, nextY] = ring[(i + 1) % ring.length] ?? [x, y];
    return sum + x * nextY - y * nextX;
  }, 0);
  return Math.sign(twice) === sense ? ring : [...ring].reverse();
}
