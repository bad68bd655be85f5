import { expect } from 'vitest';
import type { Circle, Path } from '$lib/geometry/contour.ts';
import type { Point } from '$lib/geometry/point.ts';
import type { Piece, Printed } from '$lib/stand/body.ts';
import { areaOf, besideChords, clipped, frontCorner, heightAt, holeArea, lowestAt, ringOf } from './drawn.ts';

/** Something that lies across the width between two places, mm from inboard, at its two faces as drawn. */
export interface Laid {
  readonly name: string;
  readonly from: number;
  readonly to: number;
  readonly inboard: readonly Point[];
  readonly outboard: readonly Point[];
  /** mm² of what runs through it, less what chords for arcs take from it; and mm³ of pockets in it. */
  readonly open: number;
  readonly bored: number;
  readonly rodHoles: readonly Circle[];
  /** Corners of the windows that are cut through it. */
  readonly windows: readonly Point[];
}

export type Plane = (across: number, u: number) => number;

/** Lengths that were drawn equal are so to a millionth of a millimetre, by way of sines and cosines. */
export const SAME = 6;

export const extent = (ring: readonly Point[], axis: 0 | 1): [number, number] => {
  const all = ring.map((point) => point[axis]);
  return [Math.min(...all), Math.max(...all)];
};

/** Base down on the board, the front corner of the base against the stop. */
export function flush(path: Path): { ring: Point[]; by: Point } {
  const [u, z] = frontCorner(path);
  return { ring: ringOf(path).map(([x, y]): Point => [x - u, y - z]), by: [-u, -z] };
}

const isCircle = (hole: Path | Circle): hole is Circle => hole.kind === 'circle';

const shifted = (hole: Circle, [x, y]: Point): Circle => ({
  ...hole,
  centre: [hole.centre[0] + x, hole.centre[1] + y],
});

export function laidPiece({ name, thickness, outside, inside }: Piece, from: number): Laid {
  const { ring, by } = flush(outside);
  const rodHoles = inside.filter(isCircle).map((hole) => shifted(hole, by));
  return {
    name,
    from,
    to: from + thickness,
    inboard: ring,
    outboard: ring,
    open: holeArea(inside) - besideChords(outside),
    bored: 0,
    rodHoles,
    windows: inside
      .filter((hole) => hole.kind === 'path')
      .flatMap((window) => ringOf(window).map(([x, y]): Point => [x + by[0], y + by[1]])),
  };
}

/** A printed body's outside at its bottom and its top, with what runs through it and what is only bored into it. */
function printedBody({ levels, roof }: Printed) {
  const [lowest, ...above] = levels;
  const [outside, ...holes] = lowest?.contours ?? [];
  if (outside?.kind !== 'path') throw new Error('a body has an outline');
  const bored = above.reduce(
    (sum, { height, contours }) => sum + height * (holeArea(contours.slice(1)) - holeArea(holes)),
    0,
  );
  return { floor: outside, roof: roof ?? outside, holes, bored };
}

/** The core stands up from its bed: what was up is on the listener's right. */
export function laidCore(printed: readonly Printed[], from: number, onRight: boolean): Laid {
  const bodies = printed.flatMap((body) => Array.from({ length: body.quantity }, () => ({ ...printedBody(body), ...body, own: printedBody(body) }))); // prettier-ignore
  const [first, second] = bodies;
  if (!first) throw new Error('a core has a body');
  const front = bodies.find(({ name }) => name === 'core-front');
  const rear = bodies.find(({ name }) => name === 'core-rear');
  const bored = bodies.reduce((sum, { own }) => sum + own.bored, 0);
  const outlines = front && rear ? [front, rear] : [first];
  const besides = outlines.reduce((sum, { own }) => sum + besideChords(own.floor), 0);
  const between = (
    thickness: number,
    floor: readonly Point[],
    roof: readonly Point[],
    holes: readonly (Path | Circle)[],
    by: Point,
  ): Laid => {
    const [inboard, outboard] = onRight ? [floor, roof] : [roof, floor];
    const rodHoles = holes.filter(isCircle).map((hole) => shifted(hole, by));
    const open = holeArea(holes) - besides;
    return { name: 'core', from, to: from + thickness, inboard, outboard, open, bored, rodHoles, windows: [] };
  };
  if (front && rear) {
    const moved = (ring: readonly Point[], [x, y]: Point): Point[] => ring.map(([u, z]): Point => [u + x, z + y]);
    const { by } = flush(front.own.floor);
    // The plumb faces meet: the front half's is where four of its corners are plumb over each other, tail and all.
    const { vertices } = front.own.floor;
    const cut = vertices.filter(({ x }) => vertices.filter((other) => Math.abs(other.x - x) < 1e-9).length >= 4);
    const at = Math.max(...cut.map(({ x }) => x)) + by[0];
    const starts = rear.own.floor.vertices.map(({ x }) => x);
    const put: Point = [at - Math.min(...starts), by[1]];
    // One outline for heights and areas: both halves, one after the other.
    const whole = (a: Path, b: Path): Point[] => {
      const [one, other] = [moved(ringOf(a), by), moved(ringOf(b), put)];
      return [...one, ...other, other[0] ?? [0, 0], one[0] ?? [0, 0]];
    };
    const holes = [...front.own.holes, ...rear.own.holes.map((hole) => (isCircle(hole) ? shifted(hole, [put[0] - by[0], put[1] - by[1]]) : hole))]; // prettier-ignore
    return between(
      front.size.z,
      whole(front.own.floor, rear.own.floor),
      whole(front.own.roof, rear.own.roof),
      holes,
      by,
    );
  }
  const top = second ?? first;
  const { ring: floor, by } = flush(first.own.floor);
  const { ring: roof } = flush(top.own.roof);
  if (second) expect(extent(ringOf(first.own.roof), 1)[1]).toBeCloseTo(extent(ringOf(second.own.floor), 1)[1], SAME);
  const high = bodies.reduce((sum, { size }) => sum + size.z, 0);
  return between(high, floor, roof, first.own.holes, by);
}

/** A layer's section at a place across. */
const sectionAt = ({ from, to, inboard, outboard }: Laid, across: number): Point[] => {
  const share = (across - from) / (to - from);
  return inboard.map(([x, y], i): Point => [x, y + ((outboard[i]?.[1] ?? y) - y) * share]);
};

export function faceTop({ from, to, inboard, outboard }: Laid, across: number, u: number): number | null {
  const [near, far] = [heightAt(inboard, u), heightAt(outboard, u)];
  if (near === null || far === null) return null;
  return near + ((far - near) * (across - from)) / (to - from);
}

export const faceBase = ({ inboard }: Laid, u: number): number | null => lowestAt(inboard, u);

/** Stretches of a layer under a plane, closer towards its faces, where a plane begins to take of round corners. */
const PANELS = 4;

/** Gauss and Legendre's three places in a stretch of length 2, and their weights: right up to the fifth power. */
const GAUSS = [
  [-Math.sqrt(3 / 5), 5 / 9],
  [0, 8 / 9],
  [Math.sqrt(3 / 5), 5 / 9],
] as const;

/** Of a layer under a plane. */
export function volumeOf(layer: Laid, plane: Plane | null): number {
  const { from, to, open, bored } = layer;
  const area = (across: number): number => {
    const ring = sectionAt(layer, across);
    if (!plane) return Math.abs(areaOf(ring));
    const [level, slope] = [plane(across, 0), plane(across, 1) - plane(across, 0)];
    return Math.abs(areaOf(clipped(ring, -slope, 1, level)));
  };
  const count = plane ? PANELS : 1;
  let mean = 0;
  for (let panel = 0; panel < count; panel++) {
    for (const [place, weight] of GAUSS) {
      const s = (panel + (1 + place) / 2) / count;
      const [share, rate] = plane ? [s * s * (3 - 2 * s), 6 * s * (1 - s)] : [s, 1];
      mean += (weight / 2 / count) * rate * area(from + share * (to - from));
    }
  }
  return (mean - open) * (to - from) - bored;
}
