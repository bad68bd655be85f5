import { capacityOf } from './arrange.ts';
import { claimOf, type Bed, type Body } from './nestBoard.ts';
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
  readonly receivers: readonly Bed[];
  /** The board that is to be emptied, with what it would keep. */
  readonly giver: Bed;
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
  start: readonly Bed[],
  random: Random,
  spent: () => boolean,
): Generator<Bed[] | null, 'least' | 'spent'> {
  let beds = [...start];
  let failures = 0;
  let idle = 0;
  while (!spent()) {
    const tried = propose(problem, beds, random);
    if (tried === null) {
      if (!canMove(problem, beds) || ++idle > IDLE) return 'least';
      continue;
    }
    idle = 0;
    const limit = SHORT_TRY * bodyCount(tried) * luby(failures + 1);
    const thrown = failures > 0 && random.share() < THROWS ? thrownAnew(tried, random) : tried;
    const separated = yield* separate(problem, thrown, random, limit, spent);
    failures = separated === null ? failures + 1 : 0;
    if (separated === null) continue;
    const tidy: Bed[] = [];
    for (const bed of separated) tidy.push(isSame(bed, tried.giver) ? yield* tidied(bed, problem) : bed);
    beds = replaced(beds, tidy);
    yield beds;
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
  const thrown = receivers.map((bed) => ({
    ...bed,
    bodies: bed.bodies.map((body) => (body.fixed ? body : anywhereIn(bed, body, random))),
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
): Generator<null, Bed[] | null> {
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

const withBodies = (bed: Bed | undefined, bodies: readonly Body[]): Bed[] =>
  bed === undefined ? [] : [{ ...bed, bodies }];

/** The boards with some of them changed; whole sheets that have become empty are gone, and the others close up. */
function replaced(beds: readonly Bed[], changed: readonly Bed[]): Bed[] {
  const next = beds.map((bed) => changed.find((other) => isSame(bed, other)) ?? bed);
  const kept = next.filter(({ offcut, bodies }) => offcut || bodies.length > 0);
  return closedUp(kept);
}

/**
 * What is left on a sheet laid anew, close together at its lower edge, so that the rest of it stays in one piece. As it is
 * where that does not come off, or takes too much work.
 */
function* tidied(bed: Bed, { pairs }: Problem): Generator<null, Bed> {
  const end = pairs.work + TIDYING;
  const greedy = new Greedy([{ ...bed, bodies: bed.bodies.filter(({ fixed }) => fixed) }], pairs);
  const loose = largestFirst(free(bed).map(({ item }) => item));
  for (const item of loose) {
    const laying = greedy.lay(item);
    let step = laying.next();
    for (; step.done !== true; step = laying.next()) {
      if (pairs.work > end) return bed;
      yield null;
    }
    if (!step.value) return bed;
  }
  return greedy.beds[0] ?? bed;
}

const isSame = (a: Bed, b: Bed): boolean => a.number === b.number && a.offcut === b.offcut;

/** Whole sheets numbered without gaps, save that those with something held in place keep their numbers. */
export function closedUp(beds: readonly Bed[]): Bed[] {
  const held = new Set(beds.filter((bed) => !bed.offcut && isHeld(bed)).map(({ number }) => number));
  let next = 0;
  return beds.map((bed) => {
    if (bed.offcut || isHeld(bed)) return bed;
    do next++;
    while (held.has(next));
    return bed.number === next ? bed : { ...bed, number: next };
  });
}

const isHeld = ({ bodies }: Bed): boolean => bodies.some(({ fixed }) => fixed);

/** Something that would leave a whole sheet emptier, chosen at random; null when what was chosen cannot work by area. */
function propose(problem: Problem, beds: readonly Bed[], random: Random): Try | null {
  const giver = chooseGiver(beds, random);
  const given = giver === null ? undefined : pick(free(giver), random);
  if (giver === null || given === undefined) return null;
  const others = beds.filter(
    (bed) => !isSame(bed, giver) && (bed.offcut || claimOf(bed.bodies) >= claimOf(giver.bodies)),
  );
  const first = pick(others, random);
  if (first === undefined || !fits(given.item, first.room)) return null;
  const taken = random.share() < EXCHANGES ? pick(free(first), random) : undefined;
  const receivers = random.share() < SPANS ? spanned(first, others, random) : [first];
  if (receivers.reduce((sum, { bodies }) => sum + bodies.length, 0) > MOST_BODIES) return null;
  const slack = receivers.reduce((sum, bed) => sum + slackOf(bed, problem), taken?.item.claim ?? 0);
  if (given.item.claim > slack || given.item.claim <= (taken?.item.claim ?? 0)) return null;
  if (taken !== undefined && !fits(taken.item, giver.room)) return null;
  return {
    receivers: receivers.map((bed) =>
      bed === first
        ? { ...bed, bodies: [...bed.bodies.filter((body) => body !== taken), anywhereIn(bed, given, random)] }
        : bed,
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
function chooseGiver(beds: readonly Bed[], random: Random): Bed | null {
  const whole = beds.filter((bed) => !bed.offcut && free(bed).length > 0);
  if (random.share() < 0.25) return pick(whole, random) ?? null;
  return whole.reduce<Bed | null>(
    (least, bed) => (least === null || claimOf(bed.bodies) < claimOf(least.bodies) ? bed : least),
    null,
  );
}

function spanned(first: Bed, others: readonly Bed[], random: Random): Bed[] {
  const more = pick(others, random);
  return more === undefined || more === first ? [first] : [first, more];
}

const free = ({ bodies }: Bed): Body[] => bodies.filter(({ fixed }) => !fixed);

const slackOf = ({ room, bodies }: Bed, { pairs }: Problem): number =>
  capacityOf(room, pairs.spacing) - claimOf(bodies);

/** At a random turn that fits, at a random place. */
function anywhereIn({ room }: Bed, body: Body, random: Random): Body {
  const fitting = body.item.tried.filter((shape) => fits({ shapes: [shape] }, room));
  const shape = pick(fitting, random) ?? body.shape;
  const x = random.share() * Math.max(0, room.width - shape.width);
  const y = random.share() * Math.max(0, room.height - shape.height);
  return { ...body, shape, x, y };
}

/** Whether by area alone anything could still leave a sheet for another board, even in exchange. */
function canMove(problem: Problem, beds: readonly Bed[]): boolean {
  const givers = beds.filter((bed) => !bed.offcut && free(bed).length > 0);
  return givers.some((giver) => {
    const others = beds.filter((bed) => !isSame(bed, giver));
    const least = Math.min(...free(giver).map(({ item }) => item.claim));
    const most = Math.max(...free(giver).map(({ item }) => item.claim));
    const slack = others.map((bed) => slackOf(bed, problem));
    const smaller = (bed: Bed): boolean => free(bed).some(({ item }) => item.claim < most);
    return slack.reduce((a, b) => a + Math.max(0, b), 0) >= least || others.some(smaller);
  });
}
