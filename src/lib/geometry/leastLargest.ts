import type { Point } from './point.ts';

/** A rise that grows in a straight line from where one stands: `value + slope · step`. */
export interface Rise {
  readonly value: number;
  readonly slope: Point;
}

/** A symmetric matrix of two by two, positive definite: `[xx, xy, yy]`. */
export type Bend = readonly [xx: number, xy: number, yy: number];

/** Least and most that a step may be, on each axis: `least ≤ 0 ≤ most`, without end where it is free. */
export type Room = readonly [x: Point, y: Point];

export interface LeastLargest {
  readonly step: Point;
  /** How much each rise has to say there: nothing or more, together 1. */
  readonly shares: readonly number[];
}

/**
 * The step within its room that makes the largest of several rises least, all of them bent alike:
 * `max(value + slope · step) + ½ step · bend · step`. With `bend` the unit matrix, slopes −p and values ½p² that is the
 * middle of the smallest circle round the points p. It is settled by one, two or three rises, or on an edge by one or
 * two, so all of these are tried and the best is taken: exact, whatever the rises, of which there must be one.
 */
export function leastLargest(rises: readonly Rise[], bend: Bend, room: Room): LeastLargest {
  let best: { readonly height: number; readonly step: Point; readonly by: Shares } | null = null;
  for (const { step, by } of candidates(rises, bend, room)) {
    const height = heightAt(rises, bend, step);
    if (best === null || height < best.height) best = { height, step, by };
  }
  if (best === null) throw new Error('there is a rise to make least');
  const { step, by } = best;
  return { step, shares: rises.map((_, index) => by.find(([one]) => one === index)?.[1] ?? 0) };
}

type Shares = readonly (readonly [rise: number, share: number])[];

interface Candidate {
  readonly step: Point;
  readonly by: Shares;
}

function heightAt(rises: readonly Rise[], [xx, xy, yy]: Bend, [x, y]: Point): number {
  let most = -Infinity;
  for (const { value, slope } of rises) most = Math.max(most, value + slope[0] * x + slope[1] * y);
  return most + (xx * x * x + 2 * xy * x * y + yy * y * y) / 2;
}

function candidates(rises: readonly Rise[], bend: Bend, room: Room): Candidate[] {
  const isInside = ({ step }: Candidate): boolean =>
    step.every((at, axis) => at >= (room[axis]?.[0] ?? 0) && at <= (room[axis]?.[1] ?? 0));
  const edges = ([0, 1] as const).flatMap((axis) =>
    room[axis].filter(Number.isFinite).flatMap((at) => onEdge(rises, bend, room, axis, at)),
  );
  return [...inTheOpen(rises, bend).filter(isInside), ...edges];
}

/** Where one rise has its bottom, two meet lowest, or three meet. */
function inTheOpen(rises: readonly Rise[], [xx, xy, yy]: Bend): Candidate[] {
  const determinant = xx * yy - xy * xy;
  const down = ([x, y]: Point): Point => [(xy * y - yy * x) / determinant, (xy * x - xx * y) / determinant];
  const found: Candidate[] = [];
  rises.forEach((a, i) => {
    found.push({ step: down(a.slope), by: [[i, 1]] });
    for (let j = i + 1; j < rises.length; j++) {
      const b = rises[j] ?? a;
      const apart = difference(b.slope, a.slope);
      const share = (b.value - a.value + dot(apart, down(a.slope))) / -dot(apart, down(apart));
      if (share > 0 && share < 1) {
        const slope: Point = [a.slope[0] + share * apart[0], a.slope[1] + share * apart[1]];
        found.push({ step: down(slope), by: [[i, 1 - share], [j, share]] }); // prettier-ignore
      }
      for (let k = j + 1; k < rises.length; k++) {
        const c = rises[k] ?? a;
        const other = difference(c.slope, a.slope);
        const area = apart[0] * other[1] - apart[1] * other[0];
        if (area === 0) continue;
        const [ab, ac] = [a.value - b.value, a.value - c.value];
        const step: Point = [(ab * other[1] - ac * apart[1]) / area, (ac * apart[0] - ab * other[0]) / area];
        // The shares for which the slopes balance the bend: a.slope + u · apart + v · other = −bend · step.
        const pull: Point = [-xx * step[0] - xy * step[1] - a.slope[0], -xy * step[0] - yy * step[1] - a.slope[1]];
        const u = (pull[0] * other[1] - pull[1] * other[0]) / area;
        const v = (apart[0] * pull[1] - apart[1] * pull[0]) / area;
        if (u >= 0 && v >= 0 && u + v <= 1) found.push({ step, by: [[i, 1 - u - v], [j, u], [k, v]] }); // prettier-ignore
      }
    }
  });
  return found;
}

/** The same along an edge of the room, where one axis is held. */
function onEdge(rises: readonly Rise[], [xx, xy, yy]: Bend, room: Room, held: 0 | 1, at: number): Candidate[] {
  const free = held === 0 ? 1 : 0;
  const [least, most] = room[free];
  const bend = free === 0 ? xx : yy;
  const lines = rises.map(({ value, slope }) => ({
    value: value + slope[held] * at,
    slope: slope[free] + xy * at,
  }));
  const placed = (along: number, by: Shares): Candidate => {
    const inside = Math.min(Math.max(along, least), most);
    return { step: held === 0 ? [at, inside] : [inside, at], by };
  };
  const found: Candidate[] = [];
  lines.forEach((a, i) => {
    found.push(placed(-a.slope / bend, [[i, 1]]));
    for (let j = i + 1; j < lines.length; j++) {
      const b = lines[j] ?? a;
      if (a.slope === b.slope) continue;
      const along = (a.value - b.value) / (b.slope - a.slope);
      const share = (-bend * along - a.slope) / (b.slope - a.slope);
      if (share > 0 && share < 1) found.push(placed(along, [[i, 1 - share], [j, share]])); // prettier-ignore
    }
  });
  return found;
}

const difference = (a: Point, b: Point): Point => [a[0] - b[0], a[1] - b[1]];
const dot = (a: Point, b: Point): number => a[0] * b[0] + a[1] * b[1];
