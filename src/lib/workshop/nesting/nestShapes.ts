import { extentOf, type Extent } from '$lib/geometry/extent.ts';
import { convexPieces, type Convex } from './convexPieces.ts';
import { depthAt, ready, type Push, type Ready } from './nestDepth.ts';
import { noFit } from './noFit.ts';
import { turnedExtent } from './nestable.ts';
import { once } from '$lib/project/once.ts';
import { placedContour } from './placed.ts';
import type { Part } from '$lib/workshop/part.ts';
import type { Point } from '$lib/geometry/point.ts';

/** A part at one of its turns, the lower left of its bounding box at 0, 0. */
export interface Shape {
  /** Place in the list of all shapes of a problem. */
  readonly id: number;
  readonly quarters: number;
  readonly width: number;
  readonly height: number;
  /** Where the outline has arcs, the pieces reach a little over it. */
  readonly pieces: readonly Convex[];
  /** Where the part's own origin lies. */
  readonly origin: Point;
}

/** mm. Shapes of which every corner agrees this well look alike. */
const SAME = 1e-9;

/** The shapes of a part at the turns allowed to it, numbered from `first`. */
export function shapesOf(part: Part, turns: readonly number[], first: number): Shape[] {
  const extent = extentOf(part.outside);
  return turns.map((quarters, i) => shapeOf(part, turnedExtent(extent, quarters), quarters, first + i));
}

/** Of shapes that look alike the first: half of a rectangle's turns need no trying. */
export const differing = (shapes: readonly Shape[]): Shape[] =>
  shapes.filter((shape, i) => !shapes.slice(0, i).some((other) => looksLike(other, shape)));

function shapeOf(part: Part, { left, bottom, right, top }: Extent, quarters: number, id: number): Shape {
  const pieces = once(() => {
    const outline = placedContour(part.outside, { x: 0, y: 0, turn: (quarters * Math.PI) / 2 });
    return convexPieces(outline).map((piece) => piece.map(([x, y]): Point => [x - left, y - bottom]));
  });
  return {
    id,
    quarters,
    width: right - left,
    height: top - bottom,
    get pieces() {
      return pieces();
    },
    origin: [-left || 0, -bottom || 0],
  };
}

const looksLike = (a: Shape, b: Shape): boolean =>
  a.pieces.length === 1 &&
  b.pieces.length === 1 &&
  covers(a.pieces.flat(), b.pieces.flat()) &&
  covers(b.pieces.flat(), a.pieces.flat());

const covers = (some: readonly Point[], others: readonly Point[]): boolean =>
  others.every(([x, y]) => some.some(([u, v]) => Math.abs(x - u) + Math.abs(y - v) < SAME));

/**
 * Work between two pauses, in pairs of pieces looked at: a millisecond, and some twenty in scripts
 * that run for the first time. Whoever works must be able to stop at any time,
 * and every machine pauses at the same places.
 */
export const PACE = 4_000;

/** Making a no-fit polygon takes as long as looking at so many. */
const MAKING = 40;

/** The no-fit polygons of every two shapes, made when first asked for. */
export class Pairs {
  readonly #known: (readonly Ready[])[][] = [];
  /** How many pairs of convex pieces have been looked at: the measure of work done. */
  work = 0;
  #paused = 0;

  /** `shapes`: all of a problem, each at the place of its number. */
  constructor(
    readonly spacing: number,
    readonly shapes: readonly Shape[],
  ) {}

  /** How far apart shape `b`, at (x, y) from shape `a`, must still go, mm; 0 when they are clear. The way out is in `push`. */
  depth(a: Shape, b: Shape, x: number, y: number, push: Push): number {
    const { spacing } = this;
    this.work++;
    if (x >= a.width + spacing || y >= a.height + spacing || -x >= b.width + spacing || -y >= b.height + spacing)
      return 0;
    const polygons = this.noFits(a, b);
    const [only] = polygons;
    if (only !== undefined && polygons.length === 1) return depthAt(only, x, y, spacing, push);
    return this.#deepest(polygons, x, y, push);
  }

  /** Whether a pause is due; asking counts as one. */
  due(): boolean {
    if (this.work - this.#paused < PACE) return false;
    this.#paused = this.work;
    return true;
  }

  noFits(a: Shape, b: Shape): readonly Ready[] {
    const own = (this.#known[a.id] ??= []);
    const known = own[b.id];
    if (known !== undefined) return known;
    this.work += MAKING * a.pieces.length * b.pieces.length;
    return (own[b.id] = a.pieces.flatMap((first) => b.pieces.map((second) => ready(noFit(first, second)))));
  }

  #deepest(polygons: readonly Ready[], x: number, y: number, push: Push): number {
    const own = { x: 0, y: 0 };
    let deepest = 0;
    for (const polygon of polygons) {
      this.work++;
      const depth = depthAt(polygon, x, y, this.spacing, own);
      if (depth <= deepest) continue;
      deepest = depth;
      push.x = own.x;
      push.y = own.y;
    }
    return deepest;
  }
}
