import { FIT, type Room } from './rows.ts';
import { pick, type Random } from '$lib/geometry/random.ts';
import type { Board, Body } from './nestBoard.ts';
import type { Pairs, Shape } from './nestShapes.ts';
import type { Push } from './nestDepth.ts';

/**
 * mm. Bodies this much nearer than asked count as clear. Sheets are asked for a hair more than the spacing (see
 * `arrange`), and this is half of that hair.
 */
export const NEAR = 0.005;
/** By how much the weight of the deepest overlap grows in one sweep, and the weight of a pair that is clear shrinks. */
const GROWTH = 1.6;
const DECAY = 0.95;
/** Places tried for one body in one sweep: anywhere, against a neighbour, and round where it is. */
const ANYWHERE = 8;
const AGAINST = 12;
const AROUND = 4;
/** Of these the best are looked at more closely. */
const KEPT = 2;
/** mm. Looking closely starts with steps of a share of the body's size, and ends with this one. */
const FIRST_STEP = 0.1;
const LAST_STEP = 0.002;
/** Rounds of mere pushing apart that follow a sweep of searching. */
const PUSHES = 40;
/** A share of a body's size. Where an overlap is deeper, pushing has hardly ever helped. */
const SHALLOW = 0.1;

interface Place {
  readonly board: number;
  readonly shape: Shape;
  readonly x: number;
  readonly y: number;
  readonly cost: number;
}

interface Mover {
  board: number;
  shape: Shape;
  x: number;
  y: number;
  readonly body: Body;
}

/**
 * Bodies on boards that may overlap, to be moved until none does: guided local search. The depth of every overlap is
 * weighted; what stays overlapped gets heavier until something else gives way.
 */
export class Separation {
  readonly #movers: Mover[];
  readonly #weights: Float64Array;
  readonly #push: Push = { x: 0, y: 0 };
  readonly #rooms: readonly Room[];
  readonly #pairs: Pairs;
  readonly #random: Random;
  readonly #shallow: number;
  readonly #open: number;

  /** Bodies change places among the first `open` boards; on the others they stay on their own. */
  constructor(boards: readonly Pick<Board, 'room' | 'bodies'>[], open: number, pairs: Pairs, random: Random) {
    this.#open = open;
    this.#rooms = boards.map(({ room }) => room);
    this.#movers = boards.flatMap(({ bodies }, board) =>
      bodies.map((body) => ({ board, shape: body.shape, x: body.x, y: body.y, body })),
    );
    this.#weights = new Float64Array(this.#movers.length ** 2).fill(1);
    this.#pairs = pairs;
    this.#random = random;
    const claims = this.#movers.reduce((sum, { body }) => sum + body.item.claim, 0);
    this.#shallow = SHALLOW * Math.sqrt(claims / this.#movers.length);
  }

  /** One sweep over all bodies that overlap, with pauses. True when none does any more. */
  *sweep(): Generator<undefined, boolean> {
    const overlapped = yield* this.#overlapped();
    if (overlapped.length === 0) return true;
    for (const i of shuffled(overlapped, this.#random)) yield* this.#settle(i);
    if (yield* this.#pushApart()) return true;
    yield* this.#reweigh();
    return false;
  }

  /** The bodies of each board, where they are now. */
  get bodies(): Body[][] {
    return this.#rooms.map((_, board) =>
      this.#movers.flatMap((mover) =>
        mover.board === board ? [{ ...mover.body, shape: mover.shape, x: mover.x, y: mover.y }] : [],
      ),
    );
  }

  #depth(i: number, j: number): number {
    const [a, b] = [this.#movers[i], this.#movers[j]];
    if (a === undefined || b === undefined || a.board !== b.board || (a.body.fixed && b.body.fixed)) return 0;
    return this.#pairs.depth(a.shape, b.shape, b.x - a.x, b.y - a.y, this.#push);
  }

  *#overlapped(): Generator<undefined, number[]> {
    const found = new Set<number>();
    for (let i = 0; i < this.#movers.length; i++) {
      for (let j = 0; j < i; j++) if (this.#depth(i, j) > NEAR) found.add(i).add(j);
      if (this.#pairs.due()) yield;
    }
    return [...found].filter((i) => this.#movers[i]?.body.fixed === false).sort((a, b) => a - b);
  }

  /** What it costs to have a body at a place; Infinity as soon as that is over the limit. */
  #cost(own: number, board: number, shape: Shape, x: number, y: number, limit: number): number {
    const movers = this.#movers;
    const row = own * movers.length;
    let cost = 0;
    for (let i = 0; i < movers.length; i++) {
      const other = movers[i];
      if (other === undefined || other.board !== board || i === own) continue;
      const depth = this.#pairs.depth(other.shape, shape, x - other.x, y - other.y, this.#push);
      if (depth <= NEAR) continue;
      cost += depth * (this.#weights[row + i] ?? 1);
      if (cost >= limit) return Infinity;
    }
    return cost;
  }

  /** Moves a body to the best place found for it, among them the one it has. */
  *#settle(own: number): Generator<undefined, void> {
    const mover = this.#movers[own];
    if (mover === undefined) return;
    const { board, shape, x, y } = mover;
    const now = { board, shape, x, y, cost: this.#cost(own, board, shape, x, y, Infinity) };
    if (now.cost === 0) return;
    const kept: Place[] = [now];
    for (let i = 0; i < ANYWHERE; i++) yield* this.#keep(own, kept, this.#anywhere(mover));
    for (let i = 0; i < AGAINST; i++) yield* this.#keep(own, kept, this.#against(own, mover));
    for (let i = 0; i < AROUND; i++) yield* this.#keep(own, kept, this.#around(mover));
    let best: Place = now;
    for (const place of kept) {
      const refined = yield* this.#refined(own, place);
      if (refined.cost < best.cost) best = refined;
      if (best.cost === 0) break;
    }
    mover.board = best.board;
    mover.shape = best.shape;
    mover.x = best.x;
    mover.y = best.y;
  }

  *#keep(own: number, kept: Place[], place: Omit<Place, 'cost'> | null): Generator<undefined, void> {
    if (place === null) return;
    const limit = kept.length < KEPT ? Infinity : (kept.at(-1)?.cost ?? Infinity);
    const cost = this.#cost(own, place.board, place.shape, place.x, place.y, limit);
    if (this.#pairs.due()) yield;
    if (cost === Infinity) return;
    kept.push({ ...place, cost });
    kept.sort((a, b) => a.cost - b.cost);
    kept.length = Math.min(kept.length, KEPT);
  }

  #anywhere({ body, board: own }: Mover): Omit<Place, 'cost'> | null {
    const board = own < this.#open ? this.#random.below(this.#open) : own;
    const shape = pick(body.item.tried, this.#random);
    if (shape === undefined) return null;
    return this.#held(board, shape, this.#random.share(), this.#random.share());
  }

  /** At shares of the play that a shape has in its room; null where it has none. */
  #held(board: number, shape: Shape, across: number, up: number): Omit<Place, 'cost'> | null {
    const room = this.#rooms[board];
    if (room === undefined || shape.width > room.width + FIT || shape.height > room.height + FIT) return null;
    return {
      board,
      shape,
      x: across * Math.max(0, room.width - shape.width),
      y: up * Math.max(0, room.height - shape.height),
    };
  }

  /** Touching another body, or two walls in a corner, or one of each. */
  #against(own: number, { body, board }: Mover): Omit<Place, 'cost'> | null {
    const other = this.#random.below(this.#movers.length);
    const neighbour = this.#movers[other];
    const shape = pick(body.item.tried, this.#random);
    if (neighbour === undefined || shape === undefined || other === own) return null;
    if (neighbour.board !== board && Math.max(neighbour.board, board) >= this.#open) return null;
    const room = this.#rooms[neighbour.board];
    const { edges } = pick(this.#pairs.noFits(neighbour.shape, shape), this.#random) ?? {};
    if (room === undefined || edges === undefined) return null;
    const at = 6 * this.#random.below(edges.length / 6);
    const [nx, ny] = [edges[at] ?? 0, edges[at + 1] ?? 0];
    const { spacing } = this.#pairs;
    const corner = this.#random.below(4);
    // At the edge's start, at its end, or anywhere along it.
    const along = (edges[at + 5] ?? 0) * (corner === 0 ? 0 : corner === 1 ? 1 : this.#random.share());
    const x = neighbour.x + (edges[at + 3] ?? 0) + nx * spacing - ny * along;
    const y = neighbour.y + (edges[at + 4] ?? 0) + ny * spacing + nx * along;
    return this.#clamped(neighbour.board, shape, x, y);
  }

  #clamped(board: number, shape: Shape, x: number, y: number): Omit<Place, 'cost'> | null {
    const room = this.#rooms[board];
    if (room === undefined || shape.width > room.width + FIT || shape.height > room.height + FIT) return null;
    return {
      board,
      shape,
      x: Math.min(Math.max(x, 0), Math.max(0, room.width - shape.width)),
      y: Math.min(Math.max(y, 0), Math.max(0, room.height - shape.height)),
    };
  }

  #around({ board, shape, x, y }: Mover): Omit<Place, 'cost'> | null {
    const { share } = this.#random;
    return this.#clamped(board, shape, x + (share() - 0.5) * shape.width, y + (share() - 0.5) * shape.height);
  }

  /** Coordinate descent: steps along one axis or a diagonal, shorter after each that does not pay. */
  *#refined(own: number, start: Place): Generator<undefined, Place> {
    let best = start;
    let step = FIRST_STEP * Math.min(start.shape.width, start.shape.height);
    while (step > LAST_STEP && best.cost > 0) {
      const [dx, dy] = pick(WAYS, this.#random) ?? [1, 0];
      let better: Place | null = null;
      for (const way of [step, -step]) {
        const place = this.#clamped(best.board, best.shape, best.x + way * dx, best.y + way * dy);
        if (place === null) continue;
        const cost = this.#cost(own, place.board, place.shape, place.x, place.y, better?.cost ?? best.cost);
        if (cost !== Infinity) better = { ...place, cost };
      }
      if (this.#pairs.due()) yield;
      step *= better === null ? 0.5 : 1.1;
      best = better ?? best;
    }
    return best;
  }

  /** Bodies that overlap a little push each other away, pair after pair. True when that clears everything. */
  *#pushApart(): Generator<undefined, boolean> {
    for (let round = 0; round <= PUSHES; round++) {
      const deepest = yield* this.#pushOnce();
      if (deepest <= NEAR) return true;
      if (deepest > this.#shallow) return false;
    }
    return false;
  }

  /** The deepest overlap met; no further than to one that is too deep. */
  *#pushOnce(): Generator<undefined, number> {
    let deepest = 0;
    for (let i = 0; i < this.#movers.length; i++) {
      for (let j = 0; j < i; j++) {
        const depth = this.#depth(j, i);
        if (depth <= NEAR) continue;
        deepest = Math.max(deepest, depth);
        if (depth > this.#shallow) return deepest;
        this.#part(j, i, depth);
      }
      if (this.#pairs.due()) yield;
    }
    return deepest;
  }

  /** Sends the second body of a pair the way of `push`, the first one the other way, each by half, or one by all. */
  #part(i: number, j: number, depth: number): void {
    const [a, b] = [this.#movers[i], this.#movers[j]];
    if (a === undefined || b === undefined) return;
    const { x, y } = this.#push;
    const share = a.body.fixed || b.body.fixed ? depth : depth / 2;
    this.#shift(a, -share * x, -share * y);
    this.#shift(b, share * x, share * y);
  }

  #shift(mover: Mover, dx: number, dy: number): void {
    const place = mover.body.fixed ? null : this.#clamped(mover.board, mover.shape, mover.x + dx, mover.y + dy);
    if (place !== null) [mover.x, mover.y] = [place.x, place.y];
  }

  *#reweigh(): Generator<undefined, void> {
    const count = this.#movers.length;
    const depths = new Float64Array(count * count);
    let deepest = 0;
    for (let i = 0; i < count; i++) {
      for (let j = 0; j < i; j++) {
        const depth = this.#depth(j, i);
        depths[i * count + j] = depth;
        deepest = Math.max(deepest, depth);
      }
      if (this.#pairs.due()) yield;
    }
    for (let i = 0; i < count; i++) {
      for (let j = 0; j < i; j++) {
        const depth = depths[i * count + j] ?? 0;
        const before = this.#weights[i * count + j] ?? 1;
        const weight = depth > NEAR ? before * (1.2 + (GROWTH - 1.2) * (depth / deepest)) : Math.max(1, before * DECAY);
        this.#weights[i * count + j] = weight;
        this.#weights[j * count + i] = weight;
      }
    }
  }
}

const WAYS = [
  [1, 0],
  [0, 1],
  [0.7, 0.7],
  [0.7, -0.7],
] as const;

function shuffled(list: readonly number[], { below }: Random): number[] {
  const order = [...list];
  for (let i = order.length - 1; i > 0; i--) {
    const j = below(i + 1);
    [order[i], order[j]] = [order[j] ?? 0, order[i] ?? 0];
  }
  return order;
}
