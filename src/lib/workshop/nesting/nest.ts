import { boardsInRows, problemOf, sheetOf, type Problem } from './nestProblem.ts';
import { closedUp, improve } from './nestImprove.ts';
import { cutterFaults, quantityFaults, supplyFaults, type Spaces } from './arrangeFaults.ts';
import { failure, success, type Fault, type Result } from '$lib/project/fault.ts';
import { Greedy, largestFirst } from './nestGreedy.ts';
import { heldBoards, unknownParts, type Released } from './nestLocks.ts';
import { layoutFaultsSteps, sheetsFaultsSteps } from './validity.ts';
import { leastSheets } from './nestBound.ts';
import { partsOf } from './arrange.ts';
import { random } from '$lib/geometry/random.ts';
import type { Board, Item } from './nestBoard.ts';
import type { Locked, Stock } from '$lib/project/project.ts';
import type { Part, Sheet } from '$lib/workshop/part.ts';

/** Work after which nesting ends by itself, in pairs of pieces looked at: a second or two. */
const BUDGET = 24_000_000;
/** What of the work laying copies one by one may take, at the start and again before the search. */
const GREEDY_SHARE = 0.25;
/** The seed of a layout that names none. */
export const FIRST_SEED = 1;
/** More copies than this are not tried one by one as well: in rows they lie as well, and far sooner. */
const MOST_GREEDY = 300;

export interface NestOptions {
  /** 32 bits. The same seed, parts, stocks and work give the same bytes on every machine. */
  readonly seed?: number;
  /** Pairs of pieces looked at, for all stocks together. */
  readonly budget?: number;
  /** Parts held in place: see the project file. */
  readonly locked?: readonly Locked[];
}

/** How one stock came out. */
export interface StockResult {
  readonly stock: string;
  /** Whole sheets used, and how many no arrangement can do without. */
  readonly sheets: number;
  readonly least: number;
  readonly offcuts: number;
}

/** An arrangement that can be cut: every sheet has passed the independent check. */
export interface Nested {
  readonly sheets: readonly Sheet[];
  readonly stocks: readonly StockResult[];
  /** Held parts that could not be kept where they were, each with the reason. They lie elsewhere now. */
  readonly released: readonly Released[];
  /** Where there are fewer sheets than it takes: pointers from the project. */
  readonly short: readonly Fault[];
}

/** What happens while nesting: a better answer, or so much of the work done, 0…1. */
export type NestStep =
  { readonly kind: 'better'; readonly nested: Nested } | { readonly kind: 'progress'; readonly share: number };

/**
 * Nesting, step by step, so that whoever asks can show, stop or cancel it between any two steps, which take some
 * milliseconds each. The first answer is a whole one, found in rows as `arrange` finds it; each further one takes fewer sheets,
 * or leaves the last one emptier.
 * Returns the last answer; faults as `arrange` has them, before any work.
 */
export function* nest(
  parts: readonly Part[],
  stocks: readonly Stock[],
  cutter: Spaces,
  { seed = FIRST_SEED, budget = BUDGET, locked = [] }: NestOptions = {},
): Generator<NestStep, Result<Nested>> {
  const started = yield* pausing(start(parts, stocks, cutter, locked, budget * GREEDY_SHARE));
  if (!started.ok) return started;
  const states = started.value;
  const view = (): Nested =>
    nestedOf(states, [...unknownParts(parts, locked), ...states.flatMap(({ released }) => released)]);
  const wrong = yield* pausing(layoutFaultsSteps(view().sheets, parts, cutter.spacing, cutter.margin));
  if (wrong.length > 0) return failure(...wrong);
  yield { kind: 'better', nested: view() };

  let left = budget;
  for (const [i, state] of states.entries()) {
    const { problem } = state;
    const before = problem.pairs.work;
    const share = left / (states.length - i);
    const spent = (): boolean => problem.pairs.work - before >= share;
    const greedyEnd = before + share * GREEDY_SHARE;
    const progress = (): NestStep => {
      const done = budget - left + Math.min(share, problem.pairs.work - before);
      return { kind: 'progress', share: Math.min(1, done / budget) };
    };
    for (const boards of answers(state, random(seed + i), spent, greedyEnd)) {
      if (boards !== null && (yield* pausing(take(state, boards, cutter), progress))) {
        yield { kind: 'better', nested: view() };
      }
      yield progress();
    }
    left -= problem.pairs.work - before;
  }
  yield { kind: 'progress', share: 1 };
  return success(view());
}

/** Work in steps, a step of nesting for each. */
function* pausing<Value>(
  work: Generator<unknown, Value>,
  progress: () => NestStep = () => ({ kind: 'progress', share: 0 }),
): Generator<NestStep, Value> {
  for (let step = work.next(); ; step = work.next()) {
    if (step.done === true) return step.value;
    yield progress();
  }
}

/** One stock under way. */
interface State {
  readonly problem: Problem;
  readonly released: readonly Released[];
  boards: readonly Board[];
  readonly sheets: WeakMap<Board, Sheet>;
}

function* start(
  parts: readonly Part[],
  stocks: readonly Stock[],
  cutter: Spaces,
  locked: readonly Locked[],
  limit: number,
): Generator<undefined, Result<State[]>> {
  const early = [...cutterFaults(cutter), ...quantityFaults(parts, stocks)];
  if (early.length > 0) return failure(...early);
  const results: Result<State>[] = [];
  for (const [index, stock] of stocks.entries()) {
    const own = partsOf(parts, stock);
    if (own.length > 0) results.push(yield* startStock(own, stock, index, cutter, locked, limit));
  }
  const faults = results.flatMap((result) => (result.ok ? [] : result.faults));
  return faults.length > 0
    ? failure(...faults)
    : success(results.flatMap((result) => (result.ok ? [result.value] : [])));
}

function* startStock(
  parts: readonly Part[],
  stock: Stock,
  index: number,
  cutter: Spaces,
  locked: readonly Locked[],
  limit: number,
): Generator<undefined, Result<State>> {
  const made = yield* problemOf(parts, stock, index, cutter);
  if (!made.ok) return made;
  const problem = made.value;
  const { boards: held, released } = yield* heldBoards(problem, parts, cutter, locked);
  const first = yield* held.length === 0 ? boardsInRows(problem, parts) : aroundHeld(problem, held, limit);
  if (!first.ok) return first;
  return success({ problem, released, sheets: new WeakMap(), boards: first.value });
}

/**
 * The boards with held parts filled up round those, and offcuts, for as long as the work allowed lasts; what finds no room
 * there on further sheets, in rows.
 */
function* aroundHeld(problem: Problem, held: readonly Board[], limit: number): Generator<undefined, Result<Board[]>> {
  const { items, pairs } = problem;
  const greedy = new Greedy(withOffcuts(held, problem), pairs);
  const end = pairs.work + limit;
  const left: Part[] = [];
  for (const item of largestFirst(items)) {
    const count = held.flatMap(({ bodies }) => bodies).filter((body) => body.item === item).length;
    let quantity = item.part.quantity - count;
    while (quantity > 0 && pairs.work < end && (yield* greedy.lay(item))) quantity--;
    left.push({ ...item.part, quantity });
  }
  const bare = { ...problem, stock: { ...problem.stock, offcuts: [] } };
  const more = yield* boardsInRows(
    bare,
    left.filter(({ quantity }) => quantity > 0),
  );
  if (!more.ok) return more;
  const boards = [...greedy.boards.filter(({ bodies }) => bodies.length > 0), ...more.value];
  return success(closedUp(boards));
}

/** Boards and all offcuts, also those that nothing lies on yet. */
function withOffcuts(boards: readonly Board[], { offcuts }: Problem): Board[] {
  const empty = offcuts.flatMap((room, i): Board[] =>
    boards.some(({ offcut, number }) => offcut && number === i + 1)
      ? []
      : [{ offcut: true, number: i + 1, room, bodies: [] }],
  );
  return [...boards, ...empty];
}

/** Boards that may be better than the ones a stock has; null in between. */
function* answers(
  state: State,
  source: ReturnType<typeof random>,
  spent: () => boolean,
  greedyEnd: number,
): Generator<readonly Board[] | null> {
  const { problem } = state;
  // What all that follows asks of the shapes, one after the other.
  for (const { shapes } of problem.items) {
    for (const shape of shapes) {
      void shape.pieces;
      yield null;
    }
  }
  const greedy = yield* oneByOne(state, greedyEnd);
  if (greedy !== null) yield greedy;
  yield* improve(problem, withOffcuts(state.boards, problem), source, spent);
}

/**
 * Copies laid one by one, where there are several parts and rows do them no justice; null when it takes no fewer sheets, or
 * more work than up to `end`.
 */
function* oneByOne({ problem, boards }: State, end: number): Generator<null, Board[] | null> {
  const { items, pairs, room } = problem;
  const copies = items.reduce((sum, { part }) => sum + part.quantity, 0);
  if (items.length < 2 || copies > MOST_GREEDY || boards.some(({ bodies }) => bodies.some(({ fixed }) => fixed)))
    return null;
  const whole = boards.filter(({ offcut }) => !offcut).length;
  const greedy = new Greedy(withOffcuts([], problem), pairs);
  let number = 0;
  /** Null where the work is spent. */
  function* lay(item: Item): Generator<null, boolean | null> {
    const laying = greedy.lay(item);
    for (let step = laying.next(); ; step = laying.next()) {
      if (step.done === true) return step.value;
      if (pairs.work > end) return null;
      yield null;
    }
  }
  for (const item of largestFirst(items)) {
    for (let i = 0; i < item.part.quantity; i++) {
      const laid = yield* lay(item);
      if (laid === null) return null;
      if (laid) continue;
      number++;
      if (number >= whole) return null;
      greedy.add({ room, number, offcut: false, bodies: [] });
      if ((yield* lay(item)) === null) return null;
    }
  }
  return greedy.boards;
}

/** Takes better boards into the state if they pass the check; boards that did not change have passed it before. */
function* take(state: State, boards: readonly Board[], { spacing, margin }: Spaces): Generator<undefined, boolean> {
  const { problem } = state;
  const parts = problem.items.map(({ part }) => part);
  const changed = boards.filter((board) => !state.boards.includes(board)).map((board) => sheetOf(board, problem));
  const wrong = yield* sheetsFaultsSteps(changed, parts, spacing, margin);
  if (wrong.length > 0) return false;
  state.boards = boards;
  return true;
}

function nestedOf(states: readonly State[], released: readonly Released[]): Nested {
  const perStock = states.map((state) => ({ state, sheets: sheetsOf(state) }));
  return {
    sheets: perStock.flatMap(({ sheets }) => sheets),
    stocks: perStock.map(({ state: { problem }, sheets }) => ({
      stock: problem.stock.name,
      sheets: sheets.filter(({ offcut = false }) => !offcut).length,
      least: leastSheets(problem),
      offcuts: sheets.filter(({ offcut = false }) => offcut).length,
    })),
    released,
    short: perStock.flatMap(({ state: { problem }, sheets }) => supplyFaults(sheets, problem.stock, problem.index)),
  };
}

/** The sheets of a stock: offcuts first, then whole ones, both by their numbers; empty ones left out. */
function sheetsOf({ boards, problem, sheets }: State): Sheet[] {
  return boards
    .filter(({ bodies }) => bodies.length > 0)
    .sort((a, b) => Number(b.offcut) - Number(a.offcut) || a.number - b.number)
    .map((board) => {
      const known = sheets.get(board) ?? sheetOf(board, problem);
      sheets.set(board, known);
      return known;
    });
}

/** Nesting to its end: for whoever has no use for the steps. */
export function nested(
  parts: readonly Part[],
  stocks: readonly Stock[],
  cutter: Spaces,
  options: NestOptions = {},
): Result<Nested> {
  const steps = nest(parts, stocks, cutter, options);
  for (;;) {
    const step = steps.next();
    if (step.done === true) return step.value;
  }
}
