import { needs } from '$lib/project/sentence.ts';
import { leastLargest, type Bend, type Room } from '$lib/geometry/leastLargest.ts';
import type { Point, Vec3 } from '$lib/geometry/point.ts';
import { failure, success, type Result } from '$lib/project/fault.ts';
import { stand as standFields } from '$lib/project/fields/stand.ts';
import type { Layout } from '$lib/project/project.ts';
import { STEEPEST, STEEPEST_AXIS } from './tilt.ts';

/** One head, or ear, that an aim has to serve. */
export interface Served {
  /** From the mark, seen as a right loudspeaker; z over the desk. mm. */
  readonly from: Vec3;
  /** How much its angle counts in a mean. */
  readonly weight: number;
}

/** What one aim for several heads is solved from, for one loudspeaker. mm and radians. */
export interface SharedAimTask {
  readonly served: readonly [Served, ...Served[]];
  readonly by: NonNullable<Layout['aim']['over']>['by'];
  readonly depth: number;
  readonly rake: number;
  /** The aimed point on the baffle: along it, and inboard of its middle. */
  readonly height: number;
  readonly offset: number;
  /** What a rule has set; null for what is to be found. */
  readonly toe: number | null;
  readonly tilt: number | null;
  readonly lift: number | null;
}

export interface SharedAim {
  readonly toe: number;
  readonly tilt: number;
  readonly lift: number;
}

/**
 * The toe, and the tilt or the lift, with which the largest angle between the axis and the heads served is least, or the
 * weighted mean of its square: angles at the aimed point, which moves as the cabinet turns. Exact: no other aim that the
 * rules and the limits of tilt and lift leave open does better. An end of those limits is an answer like any other.
 *
 * No answer when a head would be beside or behind the baffle.
 */
export function solveSharedAim(task: SharedAimTask): Result<SharedAim> {
  const found = stretches(task).map((stretch) => settle(task, stretch));
  const best = found.reduce((a, b) => (b.least < a.least ? b : a));
  if (task.served.some((one) => sightOf(task, best.stretch, best.at, one).ahead.value <= 0)) {
    return failure({
      pointer: '/aim/over',
      message: needs(
        'heads that one axis can point at',
        'one beside or behind the baffle',
        'aim for fewer postures, or turn the loudspeaker',
      ),
    });
  }
  return success(aimAt(task, best.stretch, best.at));
}

/** Where the second unknown may lie: the tilt, within which the front edge rises with it or stays, or the lift. */
interface Stretch {
  readonly of: 'tilt' | 'lift';
  readonly ends: Point;
  /** Whether the rear edge is the lowest, so that the front edge is raised by the tilt. */
  readonly frontRises: boolean;
}

/** The path of the aimed point has a corner at the level cabinet: each side of it is smooth. */
function stretches({ tilt, lift, rake }: SharedAimTask): Stretch[] {
  if (tilt !== null) {
    const ends: Point = lift === null ? [0, standFields.lift.max] : [lift, lift];
    return [{ of: 'lift', ends, frontRises: tilt > 0 }];
  }
  const low = Math.max(-STEEPEST, -STEEPEST_AXIS - rake);
  const high = Math.min(STEEPEST, STEEPEST_AXIS - rake);
  return [
    { of: 'tilt', ends: [low, 0], frontRises: false },
    { of: 'tilt', ends: [0, high], frontRises: true },
  ];
}

/** Toe, and tilt or lift. */
type Unknowns = Point;

function aimAt(task: SharedAimTask, { of }: Stretch, [toe, second]: Unknowns): SharedAim {
  const turned = toe - 2 * Math.PI * Math.ceil((toe - Math.PI) / (2 * Math.PI));
  return {
    toe: turned,
    tilt: of === 'tilt' ? second : (task.tilt ?? 0),
    lift: of === 'lift' ? second : (task.lift ?? 0),
  };
}

/** A number with how it grows with the unknowns, and how that growth bends. */
interface Grown {
  readonly value: number;
  readonly slope: Point;
  readonly bend: Bend;
}

/** A head as the aimed point sees it: inboard of the axis, up along the baffle, and ahead, mm. */
interface Sight {
  readonly inboard: Grown;
  readonly up: Grown;
  readonly ahead: Grown;
}

function sightOf(task: SharedAimTask, stretch: Stretch, [toe, second]: Unknowns, { from }: Served): Sight {
  const byTilt = stretch.of === 'tilt';
  const tilt = byTilt ? second : (task.tilt ?? 0);
  const lift = byTilt ? (task.lift ?? 0) : second;
  const elevation = tilt + task.rake;
  const [sinToe, cosToe, sinUp, cosUp] = [Math.sin(toe), Math.cos(toe), Math.sin(elevation), Math.cos(elevation)];
  const aside = from.y * sinToe - from.x * cosToe;
  const run = -(from.x * sinToe + from.y * cosToe);
  const rise = stretch.frontRises ? task.depth * Math.sin(tilt) : 0;
  const over = from.z - lift - rise;
  const along = over * cosUp - run * sinUp;
  const ahead = run * cosUp + over * sinUp;
  // The aimed point rises with the front edge as the cabinet tilts, or with the lift; with the tilt, the axis turns as well.
  const sinks = byTilt ? (stretch.frontRises ? -task.depth * Math.cos(tilt) : 0) : -1;
  const [turns, sinksMore] = byTilt ? [1, rise] : [0, 0];
  const [alongBy, aheadBy] = [sinks * cosUp - turns * ahead, sinks * sinUp + turns * along];
  return {
    inboard: { value: aside - task.offset, slope: [-run, 0], bend: [-aside, 0, 0] },
    up: {
      value: along - task.height,
      slope: [-aside * sinUp, alongBy],
      bend: [run * sinUp, -turns * aside * cosUp, sinksMore * cosUp - turns * (sinks * sinUp + aheadBy)],
    },
    ahead: {
      value: ahead,
      slope: [aside * cosUp, aheadBy],
      bend: [-run * cosUp, -turns * aside * sinUp, sinksMore * sinUp + turns * (sinks * cosUp + alongBy)],
    },
  };
}

/** Half the square of a head's angle off the axis: ½ · atan2(√(inboard² + up²), ahead)². */
function halfSquare({ inboard: a, up: b, ahead: c }: Sight): Grown {
  const square = a.value * a.value + b.value * b.value;
  const away = square + c.value * c.value;
  const beside = Math.sqrt(square);
  const angle = Math.atan2(beside, c.value);
  const ratio = square === 0 ? 1 / c.value : angle / beside;
  const outwards = (i: 0 | 1): number => a.value * a.slope[i] + b.value * b.slope[i];
  // The slope of the angle, times `beside`.
  const grows = (i: 0 | 1): number => (c.value * outwards(i) - square * c.slope[i]) / away;
  const bends = (i: 0 | 1, j: 0 | 1): number => {
    const at = i + j === 2 ? 2 : i + j === 1 ? 1 : 0;
    const spread = a.slope[i] * a.slope[j] + b.slope[i] * b.slope[j] + a.value * a.bend[at] + b.value * b.bend[at];
    const own = c.slope[j] * outwards(i) + c.value * spread - 2 * outwards(j) * c.slope[i] - square * c.bend[at];
    const growsMore = (own - 2 * grows(i) * (outwards(j) + c.value * c.slope[j])) / away;
    return (square === 0 ? 0 : (grows(i) * (grows(j) - ratio * outwards(j))) / square) + ratio * growsMore;
  };
  return {
    value: (angle * angle) / 2,
    slope: [ratio * grows(0), ratio * grows(1)],
    bend: [bends(0, 0), bends(0, 1), bends(1, 1)],
  };
}

/** What has to be least: the largest of these, one for each head; for the mean it is one for all of them. */
function risesAt(task: SharedAimTask, stretch: Stretch, at: Unknowns): readonly Grown[] {
  const all = task.served.map((one) => halfSquare(sightOf(task, stretch, at, one)));
  if (task.by === 'worst') return all;
  const total = task.served.reduce((sum, { weight }) => sum + weight, 0);
  return [
    mixed(
      all,
      task.served.map(({ weight }) => weight / total),
    ),
  ];
}

function mixed(all: readonly Grown[], shares: readonly number[]): Grown {
  const sum = (of: (one: Grown) => number): number =>
    all.reduce((total, one, index) => total + (shares[index] ?? 0) * of(one), 0);
  return {
    value: sum(({ value }) => value),
    slope: [sum(({ slope }) => slope[0]), sum(({ slope }) => slope[1])],
    bend: [sum(({ bend }) => bend[0]), sum(({ bend }) => bend[1]), sum(({ bend }) => bend[2])],
  };
}

const largest = (rises: readonly Grown[]): number => rises.reduce((most, { value }) => Math.max(most, value), 0);

/** Far more steps than it takes: near the end each doubles the right digits. */
const MOST_STEPS = 100;
/** Steps shorter than this are rounding: radians, and mm. */
const AT_REST = { toe: 1e-14, tilt: 1e-14, lift: 1e-11 };
/** By how much rounding alone may raise what a step makes least, as a share of it. */
const ROUNDING = 1e-13;
/** A step of which no larger share than this leads down leads nowhere. */
const LEAST_SHARE = 2 ** -40;

interface Settled {
  readonly stretch: Stretch;
  readonly at: Unknowns;
  /** What was made least, rad². */
  readonly least: number;
}

/** The best aim within a stretch: Newton's method for the largest of several numbers, their bend mixed in the shares that they had at the last step. */
function settle(task: SharedAimTask, stretch: Stretch): Settled {
  const [low, high] = stretch.ends;
  let at = startOf(task, stretch);
  let rises = risesAt(task, stretch, at);
  let shares: readonly number[] = rises.map(() => 1 / rises.length);
  for (let count = 0; count < MOST_STEPS; count++) {
    const [toe, second] = at;
    const room: Room = [task.toe === null ? ANY : HELD, [low - second, high - second]];
    const found = leastLargest(rises, cupped(mixed(rises, shares).bend, room), room);
    const [byToe, bySecond] = found.step;
    ({ shares } = found);
    const most = largest(rises) * (1 + ROUNDING);
    let share = 1;
    do {
      at = [toe + share * byToe, Math.min(Math.max(second + share * bySecond, low), high)];
      rises = risesAt(task, stretch, at);
      share /= 2;
    } while (!(largest(rises) <= most) && share > LEAST_SHARE);
    if (Math.abs(byToe) < AT_REST.toe && Math.abs(bySecond) < AT_REST[stretch.of]) break;
  }
  return { stretch, at, least: largest(rises) };
}

const ANY: Point = [-Infinity, Infinity];
const HELD: Point = [0, 0];

/** A bend that has a bottom, as steps that lead down need one: as it is where it has one, else turned upwards on each axis. */
function cupped([xx, xy, yy]: Bend, [toe, second]: Room): Bend {
  const [across, down] = [Math.abs(xx) || 1, Math.abs(yy) || 1];
  if (toe[0] === toe[1] || second[0] === second[1]) return [across, 0, down];
  return xx > 0 && xx * yy > xy * xy ? [xx, xy, yy] : [across, 0, down];
}

/** Roughly towards the middle of all that is served. */
function startOf({ served, toe, rake }: SharedAimTask, { of, ends }: Stretch): Unknowns {
  const mean = (axis: 'x' | 'y' | 'z'): number => served.reduce((sum, { from }) => sum + from[axis], 0) / served.length;
  const turned = toe ?? Math.atan2(-mean('x'), -mean('y'));
  const run = -(mean('x') * Math.sin(turned) + mean('y') * Math.cos(turned));
  const second = of === 'tilt' ? Math.atan2(mean('z'), run) - rake : mean('z');
  return [turned, Math.min(Math.max(second, ends[0]), ends[1])];
}
