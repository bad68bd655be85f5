import { FIT, type Room } from './rows.ts';
import { NEAR } from './nestSeparate.ts';
import type { Board, Body, Item } from './nestBoard.ts';
import type { Pairs, Shape } from './nestShapes.ts';
import type { Ready } from './nestDepth.ts';

/** Free places of a shape on a board, and how many of the board's bodies they reckon with. */
interface Known {
  readonly spots: Spot[];
  bodies: number;
}

interface Filling {
  readonly board: Board;
  readonly bodies: Body[];
  readonly known: Map<number, Known>;
}

/** Edges tried against edges that take as long as one pair of pieces looked at. */
const EDGES_A_PAIR = 4;

interface Spot {
  readonly x: number;
  readonly y: number;
}

/** Largest first: the order in which greedy takes parts. Of equals the first. */
export const largestFirst = (items: readonly Item[]): Item[] => [...items].sort((a, b) => b.claim - a.claim);

/**
 * Copies laid one after the other, never moved again: each on the first board that takes it, at the lowest of the places
 * where it touches two neighbours, two walls, or one of each; the leftmost of equals. Unlike rows it works round copies
 * that already lie on a board. All that is looked at counts as work of the pairs; between two steps nothing takes long.
 */
export class Greedy {
  readonly #fillings: Filling[] = [];
  readonly #pairs: Pairs;

  constructor(boards: readonly Board[], pairs: Pairs) {
    this.#pairs = pairs;
    for (const board of boards) this.add(board);
  }

  /** Lays one copy; false where no board takes it. */
  *lay(item: Item): Generator<undefined, boolean> {
    for (const filling of this.#fillings) if (yield* this.#layOn(filling, item)) return true;
    return false;
  }

  add(board: Board): void {
    this.#fillings.push({ board, bodies: [...board.bodies], known: new Map() });
  }

  get boards(): Board[] {
    return this.#fillings.map(({ board, bodies }) => ({ ...board, bodies: [...bodies] }));
  }

  *#layOn(filling: Filling, item: Item): Generator<undefined, boolean> {
    let best: Body | null = null;
    for (const shape of item.tried) {
      const spot = yield* this.#lowest(filling, shape);
      if (spot === null) continue;
      const top = spot.y + shape.height;
      const bestTop = best === null ? Infinity : best.y + best.shape.height;
      if (top < bestTop - FIT || (top < bestTop + FIT && spot.x < (best?.x ?? Infinity))) {
        best = { item, shape, ...spot, fixed: false };
      }
    }
    if (best !== null) filling.bodies.push(best);
    return best !== null;
  }

  /** The lowest free place of a shape. Places once found taken are forgotten: they never become free again. */
  *#lowest(filling: Filling, shape: Shape): Generator<undefined, Spot | null> {
    const { room } = filling.board;
    const known = filling.known.get(shape.id) ?? { spots: walls(room, shape), bodies: 0 };
    filling.known.set(shape.id, known);
    const { spots } = known;
    for (; known.bodies < filling.bodies.length; known.bodies++) {
      const [others, body] = [filling.bodies.slice(0, known.bodies), filling.bodies[known.bodies]];
      if (body === undefined) continue;
      for (const spot of yield* this.#touching(room, others, body, shape)) spots.push(spot);
    }
    spots.sort(highestFirst);
    this.#pairs.work += Math.ceil(spots.length / EDGES_A_PAIR);
    for (let spot = spots.at(-1); spot !== undefined; spot = spots.at(-1)) {
      if (this.#isClear(filling.bodies, shape, spot)) return spot;
      spots.pop();
      if (this.#pairs.due()) yield;
    }
    return null;
  }

  #isClear(bodies: readonly Body[], shape: Shape, { x, y }: Spot): boolean {
    const push = { x: 0, y: 0 };
    return bodies.every((body) => this.#pairs.depth(body.shape, shape, x - body.x, y - body.y, push) <= NEAR);
  }

  /** Places of a shape where it touches one body and a wall, or that body and one of the others, or one at its corner. */
  *#touching(room: Room, others: readonly Body[], body: Body, shape: Shape): Generator<undefined, readonly Spot[]> {
    const [width, height] = [room.width - shape.width, room.height - shape.height];
    if (width < -FIT || height < -FIT) return [];
    const reached = others.filter((other) => this.#bothReached(body, other, shape));
    const walled = Float64Array.of(0, 0, 0, height, width, height, width, 0);
    const found: Spot[] = [];
    for (const own of this.#pairs.noFits(body.shape, shape)) {
      const outline = this.#outline(own, body);
      for (let i = 0; i < outline.length; i += 2) found.push({ x: outline[i] ?? 0, y: outline[i + 1] ?? 0 });
      addCrossings(outline, walled, found);
      for (const other of reached) {
        const noFits = this.#pairs.noFits(other.shape, shape);
        this.#pairs.work += Math.ceil(noFits.length / EDGES_A_PAIR);
        for (const against of noFits) {
          if (!this.#couldCross(own, body, against, other)) continue;
          this.#pairs.work += Math.ceil((own.edges.length * against.edges.length) / (9 * EDGES_A_PAIR));
          addCrossings(outline, this.#outline(against, other), found);
        }
        if (this.#pairs.due()) yield;
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

  /** Whether the outlines round two bodies could cross, as far as their boxes tell. */
  #couldCross(a: Ready, bodyA: Body, b: Ready, bodyB: Body): boolean {
    const [room, x, y] = [2 * this.#pairs.spacing, bodyB.x - bodyA.x, bodyB.y - bodyA.y];
    return (
      b.box.left + x - a.box.right <= room &&
      a.box.left - b.box.right - x <= room &&
      b.box.bottom + y - a.box.top <= room &&
      a.box.bottom - b.box.top - y <= room
    );
  }

  /**
   * Where a shape's place may run round a piece of a body: its no-fit polygon, each edge moved out by the spacing. Corners, x
   * after y after x.
   */
  #outline({ edges }: Ready, body: Body): Float64Array {
    const { spacing } = this.#pairs;
    const corners = new Float64Array((edges.length / 6) * 4);
    for (let at = 0, to = 0; at < edges.length; at += 6, to += 4) {
      const [nx, ny, length] = [edges[at] ?? 0, edges[at + 1] ?? 0, edges[at + 5] ?? 0];
      const x = body.x + (edges[at + 3] ?? 0) + nx * spacing;
      const y = body.y + (edges[at + 4] ?? 0) + ny * spacing;
      corners[to] = x;
      corners[to + 1] = y;
      corners[to + 2] = x - ny * length;
      corners[to + 3] = y + nx * length;
    }
    return corners;
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

/** Adds where two closed outlines cross. Plain loops: this is most of what laying copies one by one takes. */
function addCrossings(one: Float64Array, other: Float64Array, found: Spot[]): void {
  for (let i = 0; i < one.length; i += 2) {
    const [ax, ay, bx, by] = edgeAt(one, i);
    const [left, right] = ax < bx ? [ax, bx] : [bx, ax];
    const [bottom, top] = ay < by ? [ay, by] : [by, ay];
    for (let j = 0; j < other.length; j += 2) {
      const [cx, cy, dx, dy] = edgeAt(other, j);
      if ((cx < left && dx < left) || (cx > right && dx > right)) continue;
      if ((cy < bottom && dy < bottom) || (cy > top && dy > top)) continue;
      const [ux, uy, vx, vy] = [bx - ax, by - ay, dx - cx, dy - cy];
      const cross = ux * vy - uy * vx;
      if (cross === 0) continue;
      const [wx, wy] = [cx - ax, cy - ay];
      const [s, t] = [(wx * vy - wy * vx) / cross, (wx * uy - wy * ux) / cross];
      if (s >= 0 && s <= 1 && t >= 0 && t <= 1) found.push({ x: ax + s * ux, y: ay + s * uy });
    }
  }
}

/** The edge that begins at a corner: x and y of both its ends. */
function edgeAt(corners: Float64Array, at: number): readonly [number, number, number, number] {
  const next = at + 2 < corners.length ? at + 2 : 0;
  return [corners[at] ?? 0, corners[at + 1] ?? 0, corners[next] ?? 0, corners[next + 1] ?? 0];
}
