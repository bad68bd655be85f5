import { FIT, type Room } from './rows.ts';
import { NEAR } from './nestSeparate.ts';
import type { Bed, Body, Item } from './nestBoard.ts';
import type { Pairs, Shape } from './nestShapes.ts';
import type { Point } from '$lib/geometry/point.ts';

/** Free places of a shape on a board, and how many of the board's bodies they reckon with. */
interface Known {
  readonly spots: Spot[];
  bodies: number;
}

interface Board {
  readonly bed: Bed;
  readonly bodies: Body[];
  readonly known: Map<number, Known>;
}

interface Spot {
  readonly x: number;
  readonly y: number;
}

/** Largest first: the order in which greedy takes parts. Of equals the first. */
export const largestFirst = (items: readonly Item[]): Item[] => [...items].sort((a, b) => b.claim - a.claim);

/**
 * Copies laid one after the other, never moved again: each on the first board that takes it, at the lowest of the places
 * where it touches two neighbours, two walls, or one of each; the leftmost of equals. Unlike rows it works round copies
 * that already lie on a board.
 */
export class Greedy {
  readonly #boards: Board[] = [];
  readonly #pairs: Pairs;

  constructor(beds: readonly Bed[], pairs: Pairs) {
    this.#pairs = pairs;
    for (const bed of beds) this.add(bed);
  }

  /** Lays one copy; false where no board takes it. */
  lay(item: Item): boolean {
    return this.#boards.some((board) => this.#layOn(board, item));
  }

  add(bed: Bed): void {
    this.#boards.push({ bed, bodies: [...bed.bodies], known: new Map() });
  }

  get beds(): Bed[] {
    return this.#boards.map(({ bed, bodies }) => ({ ...bed, bodies: [...bodies] }));
  }

  #layOn(board: Board, item: Item): boolean {
    let best: Body | null = null;
    for (const shape of item.tried) {
      const spot = this.#lowest(board, shape);
      if (spot === null) continue;
      const top = spot.y + shape.height;
      const bestTop = best === null ? Infinity : best.y + best.shape.height;
      if (top < bestTop - FIT || (top < bestTop + FIT && spot.x < (best?.x ?? Infinity))) {
        best = { item, shape, ...spot, fixed: false };
      }
    }
    if (best !== null) board.bodies.push(best);
    return best !== null;
  }

  /** The lowest free place of a shape. Places once found taken are forgotten: they never become free again. */
  #lowest(board: Board, shape: Shape): Spot | null {
    const { room } = board.bed;
    const known = board.known.get(shape.id) ?? { spots: walls(room, shape), bodies: 0 };
    board.known.set(shape.id, known);
    const { spots } = known;
    for (; known.bodies < board.bodies.length; known.bodies++) {
      const [others, body] = [board.bodies.slice(0, known.bodies), board.bodies[known.bodies]];
      if (body !== undefined) spots.push(...this.#touching(room, others, body, shape));
    }
    spots.sort(highestFirst);
    for (let spot = spots.at(-1); spot !== undefined; spot = spots.at(-1)) {
      if (this.#isClear(board.bodies, shape, spot)) return spot;
      spots.pop();
    }
    return null;
  }

  #isClear(bodies: readonly Body[], shape: Shape, { x, y }: Spot): boolean {
    const push = { x: 0, y: 0 };
    return bodies.every((body) => this.#pairs.depth(body.shape, shape, x - body.x, y - body.y, push) <= NEAR);
  }

  /** Places of a shape where it touches one body and a wall, or that body and one of the others, or one at its corner. */
  #touching(room: Room, others: readonly Body[], body: Body, shape: Shape): Spot[] {
    const [width, height] = [room.width - shape.width, room.height - shape.height];
    if (width < -FIT || height < -FIT) return [];
    const own = this.#outlines(body, shape);
    const found: Spot[] = own.flatMap((outline) => outline.map(([x, y]) => ({ x, y })));
    for (const outline of own) {
      found.push(
        ...crossings(outline, [
          [0, 0],
          [0, height],
          [width, height],
          [width, 0],
        ]),
      );
      for (const other of others) {
        if (!this.#bothReached(body, other, shape)) continue;
        for (const against of this.#outlines(other, shape)) found.push(...crossings(outline, against));
      }
    }
    return found.flatMap(({ x, y }) => {
      if (!(x >= -NEAR && y >= -NEAR && x <= width + NEAR && y <= height + NEAR)) return [];
      return [{ x: within(x, width), y: within(y, height) }];
    });
  }

  /** Whether a shape could touch both bodies at once, as far as their boxes tell. */
  #bothReached(a: Body, b: Body, shape: Shape): boolean {
    const room = 2 * this.#pairs.spacing;
    const [width, height] = [shape.width + room, shape.height + room];
    return (
      a.x - (b.x + b.shape.width) <= width &&
      b.x - (a.x + a.shape.width) <= width &&
      a.y - (b.y + b.shape.height) <= height &&
      b.y - (a.y + a.shape.height) <= height
    );
  }

  /** Where a shape's place may run round a body: its no-fit polygons, each edge moved out by the spacing. */
  #outlines(body: Body, shape: Shape): Point[][] {
    const { spacing } = this.#pairs;
    return this.#pairs.noFits(body.shape, shape).map(({ edges }) =>
      Array.from({ length: edges.length / 6 }, (_, i) => 6 * i).flatMap((at): Point[] => {
        const [nx, ny, length] = [edges[at] ?? 0, edges[at + 1] ?? 0, edges[at + 5] ?? 0];
        const x = body.x + (edges[at + 3] ?? 0) + nx * spacing;
        const y = body.y + (edges[at + 4] ?? 0) + ny * spacing;
        return [
          [x, y],
          [x - ny * length, y + nx * length],
        ];
      }),
    );
  }
}

const within = (value: number, most: number): number => Math.min(Math.max(value, 0), Math.max(0, most));

/** The lowest last, of equals the leftmost: so that it is the next to be taken off the end. */
const highestFirst = (a: Spot, b: Spot): number => b.y - a.y || b.x - a.x;

function walls({ width, height }: Room, shape: Shape): Spot[] {
  const [right, top] = [width - shape.width, height - shape.height];
  if (right < -FIT || top < -FIT) return [];
  const [x, y] = [within(right, right), within(top, top)];
  return [
    { x: 0, y: 0 },
    { x, y: 0 },
    { x: 0, y },
    { x, y },
  ];
}

/** Where two closed outlines cross. */
function crossings(one: readonly Point[], other: readonly Point[]): Spot[] {
  const found: Spot[] = [];
  for (let i = 0; i < one.length; i++) {
    const [a, b] = [one[i], one[(i + 1) % one.length]];
    if (a === undefined || b === undefined) continue;
    for (let j = 0; j < other.length; j++) {
      const [c, d] = [other[j], other[(j + 1) % other.length]];
      if (c === undefined || d === undefined) continue;
      const spot = crossing(a, b, c, d);
      if (spot !== null) found.push(spot);
    }
  }
  return found;
}

function crossing(a: Point, b: Point, c: Point, d: Point): Spot | null {
  const [ux, uy, vx, vy] = [b[0] - a[0], b[1] - a[1], d[0] - c[0], d[1] - c[1]];
  const cross = ux * vy - uy * vx;
  if (cross === 0) return null;
  const [wx, wy] = [c[0] - a[0], c[1] - a[1]];
  const [s, t] = [(wx * vy - wy * vx) / cross, (wx * uy - wy * ux) / cross];
  return s >= 0 && s <= 1 && t >= 0 && t <= 1 ? { x: a[0] + s * ux, y: a[1] + s * uy } : null;
}
