import { capacityOf } from './arrange.ts';
import { claimOf, type Board, type Body } from './nestBoard.ts';
import { fits } from './nestBound.ts';
import { Greedy, largestFirst } from './nestGreedy.ts';
import { pick, type Random } from '$lib/geometry/random.ts';
import { Separation } from './nestSeparate.ts';
import type { Problem } from './nestProblem.ts';

/** Work that a short try may take for each body in it, in pairs looked at. */
const SHORT_TRY = 30_000;
/** Work that laying the rest of a sheet anew may take, in pairs looked at. */
const TIDYING = 1_000_000;
/** How often a try that follows a failure begins with all bodies thrown anew. */
const THROWS = 0.35;
/** A try takes in no more bodies than this: its work grows with their square. */
const MOST_BODIES = 400;
/** How often a part is exchanged for a smaller one rather than added. */
const EXCHANGES = 0.4;
/** How often a try spans more than one receiving board. */
const SPANS = 0.35;
/** Tries in a row for which nothing to do was found: by then there is nothing. */
const IDLE = 1000;

interface Try {
  /** The boards that are searched together, with what they would hold. */
  readonly receivers: readonly Board[];
  /** The board that is to be emptied, with what it would keep. */
  readonly giver: Board;
  /** Whether the giver gets something back. */
  readonly exchange: boolean;
}

/**
 * Fewer whole sheets, and the last of them emptier, step by step: a part from the emptiest sheet is put onto fuller ones,
 * or exchanged for a smaller one, and what then overlaps is separated. Yields the boards after each step that came off,
 * and null in between, about once a millisecond. Ends when nothing can move by area alone, or when the work is
 * spent. Every board yielded is free of overlaps if the first ones were.
 */
export function* improve(
  problem: Problem,
  start: readonly Board[],
  random: Random,
  spent: () => boolean,
): Generator<Board[] | null, 'least' | 'spent'> {
  let boards = [...start];
  let failures = 0;
  let idle = 0;
  while (!spent()) {
    const tried = propose(problem, boards, random);
    if (tried === null) {
      if (!canMove(problem, boards) || ++idle > IDLE) return 'least';
      continue;
    }
    idle = 0;
    const limit = SHORT_TRY * bodyCount(tried) * luby(failures + 1);
    const thrown = failures > 0 && random.share() < THROWS ? thrownAnew(tried, random) : tried;
    const separated = yield* separate(problem, thrown, random, limit, spent);
    failures = separated === null ? failures + 1 : 0;
    if (separated === null) continue;
    const tidy: Board[] = [];
    for (const board of separated) tidy.push(isSame(board, tried.giver) ? yield* tidied(board, problem) : board);
    boards = replaced(boards, tidy);
    yield boards;
  }
  return 'spent';
}

/**
 * Mostly short tries, now and then longer ones: 1, 1, 2, 1, 1, 2, 4, 1… (Luby, Sinclair and Zuckerman 1993), which is near the
 * best there is when nobody knows how long a search that succeeds will take.
 */
export function luby(count: number): number {
  let size = 1;
  while (size < count + 1) size *= 2;
  return size === count + 1 ? size / 2 : luby(count + 1 - size / 2);
}

function thrownAnew({ receivers, giver, exchange }: Try, random: Random): Try {
  const thrown = receivers.map((board) => ({
    ...board,
    bodies: board.bodies.map((body) => (body.fixed ? body : anywhereIn(board, body, random))),
  }));
  return { receivers: thrown, giver, exchange };
}

const bodyCount = ({ receivers }: Try): number => receivers.reduce((sum, { bodies }) => sum + bodies.length, 0);

/** The boards of a try when no overlap is left; null when the work allowed was not enough. */
function* separate(
  { pairs }: Problem,
  { receivers, giver, exchange }: Try,
  random: Random,
  limit: number,
  spent: () => boolean,
): Generator<null, Board[] | null> {
  const boards = exchange ? [...receivers, giver] : receivers;
  const separation = new Separation(boards, receivers.length, pairs, random);
  const end = pairs.work + limit;
  while (pairs.work < end && !spent()) {
    const sweep = separation.sweep();
    let step = sweep.next();
    while (step.done !== true) {
      if (spent()) return null;
      yield null;
      step = sweep.next();
    }
    if (step.value) {
      const separated = separation.bodies.flatMap((bodies, i) => withBodies(boards[i], bodies));
      return exchange ? separated : [...separated, giver];
    }
    yield null;
  }
  return null;
}

const withBodies = (board: Board | undefined, bodies: readonly Body[]): Board[] =>
  board === undefined ? [] : [{ ...board, bodies }];

/** The boards with some of them changed; whole sheets that have become empty are gone, and the others close up. */
function replaced(boards: readonly Board[], changed: readonly Board[]): Board[] {
  const next = boards.map((board) => changed.find((other) => isSame(board, other)) ?? board);
  const kept = next.filter(({ offcut, bodies }) => offcut || bodies.length > 0);
  return closedUp(kept);
}

/**
 * What is left on a sheet laid anew, close together at its lower edge, so that the rest of it stays in one piece. As it is
 * where that does not come off, or takes too much work.
 */
function* tidied(board: Board, { pairs }: Problem): Generator<null, Board> {
  const end = pairs.work + TIDYING;
  const greedy = new Greedy([{ ...board, bodies: board.bodies.filter(({ fixed }) => fixed) }], pairs);
  const loose = largestFirst(free(board).map(({ item }) => item));
  for (const item of loose) {
    const laying = greedy.lay(item);
    let step = laying.next();
    for (; step.done !== true; step = laying.next()) {
      if (pairs.work > end) return board;
      yield null;
    }
    if (!step.value) return board;
  }
  return greedy.boards[0] ?? board;
}

const isSame = (a: Board, b: Board): boolean => a.number === b.number && a.offcut === b.offcut;

/** Whole sheets numbered without gaps, save that those with something held in place keep their numbers. */
export function closedUp(boards: readonly Board[]): Board[] {
  const held = new Set(boards.filter((board) => !board.offcut && isHeld(board)).map(({ number }) => number));
  let next = 0;
  return boards.map((board) => {
    if (board.offcut || isHeld(board)) return board;
    do next++;
    while (held.has(next));
    return board.number === next ? board : { ...board, number: next };
  });
}

const isHeld = ({ bodies }: Board): boolean => bodies.some(({ fixed }) => fixed);

/** Something that would leave a whole sheet emptier, chosen at random; null when what was chosen cannot work by area. */
function propose(problem: Problem, boards: readonly Board[], random: Random): Try | null {
  const giver = chooseGiver(boards, random);
  const given = giver === null ? undefined : pick(free(giver), random);
  if (giver === null || given === undefined) return null;
  const others = boards.filter(
    (board) => !isSame(board, giver) && (board.offcut || claimOf(board.bodies) >= claimOf(giver.bodies)),
  );
  const first = pick(others, random);
  if (first === undefined || !fits(given.item, first.room)) return null;
  const taken = random.share() < EXCHANGES ? pick(free(first), random) : undefined;
  const receivers = random.share() < SPANS ? spanned(first, others, random) : [first];
  if (receivers.reduce((sum, { bodies }) => sum + bodies.length, 0) > MOST_BODIES) return null;
  const slack = receivers.reduce((sum, board) => sum + slackOf(board, problem), taken?.item.claim ?? 0);
  if (given.item.claim > slack || given.item.claim <= (taken?.item.claim ?? 0)) return null;
  if (taken !== undefined && !fits(taken.item, giver.room)) return null;
  return {
    receivers: receivers.map((board) =>
      board === first
        ? { ...board, bodies: [...board.bodies.filter((body) => body !== taken), anywhereIn(board, given, random)] }
        : board,
    ),
    giver: {
      ...giver,
      bodies: [
        ...giver.bodies.filter((body) => body !== given),
        ...(taken === undefined ? [] : [anywhereIn(giver, taken, random)]),
      ],
    },
    exchange: taken !== undefined,
  };
}

/** Mostly the emptiest whole sheet, else any that has something to give. */
function chooseGiver(boards: readonly Board[], random: Random): Board | null {
  const whole = boards.filter((board) => !board.offcut && free(board).length > 0);
  if (random.share() < 0.25) return pick(whole, random) ?? null;
  return whole.reduce<Board | null>(
    (least, board) => (least === null || claimOf(board.bodies) < claimOf(least.bodies) ? board : least),
    null,
  );
}

function spanned(first: Board, others: readonly Board[], random: Random): Board[] {
  const more = pick(others, random);
  return more === undefined || more === first ? [first] : [first, more];
}

const free = ({ bodies }: Board): Body[] => bodies.filter(({ fixed }) => !fixed);

const slackOf = ({ room, bodies }: Board, { pairs }: Problem): number =>
  capacityOf(room, pairs.spacing) - claimOf(bodies);

/** At a random turn that fits, at a random place. */
function anywhereIn({ room }: Board, body: Body, random: Random): Body {
  const fitting = body.item.tried.filter((shape) => fits({ shapes: [shape] }, room));
  const shape = pick(fitting, random) ?? body.shape;
  const x = random.share() * Math.max(0, room.width - shape.width);
  const y = random.share() * Math.max(0, room.height - shape.height);
  return { ...body, shape, x, y };
}

/** Whether by area alone anything could still leave a sheet for another board, even in exchange. */
function canMove(problem: Problem, boards: readonly Board[]): boolean {
  const givers = boards.filter((board) => !board.offcut && free(board).length > 0);
  return givers.some((giver) => {
    const others = boards.filter((board) => !isSame(board, giver));
    const least = Math.min(...free(giver).map(({ item }) => item.claim));
    const most = Math.max(...free(giver).map(({ item }) => item.claim));
    const slack = others.map((board) => slackOf(board, problem));
    const smaller = (board: Board): boolean => free(board).some(({ item }) => item.claim < most);
    return slack.reduce((a, b) => a + Math.max(0, b), 0) >= least || others.some(smaller);
  });
}
