import { radians } from '$lib/geometry/angle.ts';
import { angleBetween, distance, subtract, type Vec3 } from '$lib/geometry/point.ts';
import type { Pose } from '$lib/layout/pose.ts';
import { sideNames, type SideName, type Speaker } from '$lib/project/project.ts';
import { designPointOf } from './designPoint.ts';
import { CANCELLED, meetingOf, relativeDifference, sumRatio, type Meeting } from './driversMeet.ts';
import { pathDifference } from './path.ts';
import { levelForShift } from './phantom.ts';
import { pistonLevel, pistonRadius, pistonSize } from './piston.ts';
import { placedTreble } from './trebleDriver.ts';

/** How much may change before a head counts as out of place, and where each number comes from. */
export const HEAD_LIMITS = {
  /** Most that the treble may fall below its level on the axis, dB, and the frequency that stands for it, Hz. */
  treble: {
    limit: 3,
    frequency: 10_000,
    unit: 'dB',
    source: 'half power of a flat piston, an upper bound of the loss; 10 kHz: rule of thumb',
  },
  /** Most that the sum at a crossover may fall below that at the planned head, dB. */
  crossover: { limit: 3, unit: 'dB', source: 'rule of thumb' },
  /** Most time between the two loudspeakers, µs. */
  time: {
    limit: 100,
    unit: 'µs',
    source: 'ITU-R BS.1116-3, as a model; a full shift takes about 1000 µs',
  },
  /** Most level between them, dB. */
  level: {
    limit: levelForShift(radians(1)),
    unit: 'dB',
    source:
      'shifts the image by 1°, the least that is heard in front (Mills 1958), by the most cautious of known readings',
  },
} as const;

/** What may drive a head back, the first to be named when two are alike. */
export type HeadCriterion = keyof typeof HEAD_LIMITS;
const headCriteria = ['treble', 'crossover', 'time', 'level'] as const satisfies readonly HeadCriterion[];

/** What a head hears at one place, spreading and directivity alone: no surface sends anything back. */
export interface HeadHearing {
  /** Treble re the axis, dB, 0 or less; the worse side. Behind a baffle as in its plane. */
  readonly treble: number;
  /**
   * Sum at the crossover that changes for the worse most, re the planned head, dB; 0 without crossovers. Null where nobody
   * said how the drivers were lined up: nothing is known of their sum then, and it limits nothing.
   */
  readonly crossover: number | null;
  /** (left − right) path, µs: positive when the right one is heard first. */
  readonly time: number;
  /** 20·lg(left path / right path), dB: positive when the right one is louder. */
  readonly level: number;
}

/** One loudspeaker as a listener meets it. */
export type Voice = Pick<Pose, 'forward' | 'aimedPoint' | 'drivers'>;
export type Voices = Readonly<Record<SideName, Voice>>;

const MICROSECONDS_PER_MM = 1000;

/**
 * What is heard at any place, compared with the planned head. `speed` is the speed of sound, m/s. Lengths in mm, desk
 * frame. The treble is that of the driver with the highest role, the smallest of several; the paths between the two
 * loudspeakers are those from their aimed points, as in the triangle.
 */
export function hearingAt(
  speaker: Pick<Speaker, 'crossovers' | 'designPoint' | 'drivers'>,
  voices: Voices,
  planned: Vec3,
  speed: number,
): (head: Vec3) => HeadHearing {
  const { left, right } = voices;
  const trebles = sideNames.map((side) => trebleOf(voices[side], speed));
  const { crossovers } = speaker;
  const point = designPointOf(speaker);
  const sums =
    point &&
    sideNames.flatMap((side) =>
      crossovers.map((crossover) => sumOf(meetingOf(crossover, voices[side].drivers, point, speed), planned)),
    );
  const crossoverAt = (head: Vec3): number | null => {
    if (crossovers.length === 0) return 0;
    return sums && least(sums, head, Infinity);
  };
  return (head) => ({
    treble: least(trebles, head, 0),
    crossover: crossoverAt(head),
    time: (pathDifference(left.aimedPoint, right.aimedPoint, head) / speed) * MICROSECONDS_PER_MM,
    level: 20 * Math.log10(distance(left.aimedPoint, head) / distance(right.aimedPoint, head)),
  });
}

type LevelAt = (head: Vec3) => number;

function least(levels: readonly LevelAt[], head: Vec3, start: number): number {
  let worst = start;
  for (const level of levels) worst = Math.min(worst, level(head));
  return worst;
}

function trebleOf({ forward, drivers }: Voice, speed: number): LevelAt {
  const { driver, position } = placedTreble(drivers);
  const size = pistonSize(pistonRadius(driver), HEAD_LIMITS.treble.frequency, speed);
  return (head) => pistonLevel(size, angleBetween(forward, subtract(head, position)));
}

/** Level of a crossover's sum re that at the planned head, both held at `CANCELLED` from below, dB. */
function sumOf(meeting: Meeting, planned: Vec3): LevelAt {
  const ratioAt = (head: Vec3) =>
    Math.max(sumRatio(meeting, relativeDifference(meeting, head) * meeting.perMillimetre), CANCELLED);
  const reference = ratioAt(planned);
  return (head) => 20 * Math.log10(ratioAt(head) / reference);
}

function usedUp({ treble, crossover, time, level }: HeadHearing): Record<HeadCriterion, number> {
  return {
    treble: -treble / HEAD_LIMITS.treble.limit,
    crossover: -(crossover ?? 0) / HEAD_LIMITS.crossover.limit,
    time: Math.abs(time) / HEAD_LIMITS.time.limit,
    level: Math.abs(level) / HEAD_LIMITS.level.limit,
  };
}

interface Strain {
  readonly by: HeadCriterion;
  /** How much of the limit is used up: over 1 is too much. */
  readonly used: number;
}

/** Every limit, and how much of it is used up. */
export function strainsOf(hearing: HeadHearing): readonly Strain[] {
  const used = usedUp(hearing);
  return headCriteria.map((by) => ({ by, used: used[by] }));
}

/** The limit that is used up most. */
export const strainOf = (hearing: HeadHearing): Strain =>
  strainsOf(hearing).reduce((most, one) => (one.used > most.used ? one : most));
