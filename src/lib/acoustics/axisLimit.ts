import { angleBetween, dot, subtract, vec3, type Vec3 } from '$lib/geometry/point.ts';
import type { PlacedDriver, Pose } from '$lib/layout/pose.ts';
import type { Speaker } from '$lib/project/project.ts';
import { designPointOf } from './designPoint.ts';
import { meetingOf, relativeDifference, sumRatio, type Meeting } from './driversMeet.ts';
import { HEAD_LIMITS } from './headHearing.ts';
import { lowerAndUpper } from './pair.ts';
import { pathDifference } from './path.ts';
import { beamHalfAngle, pistonRadius, pistonSize } from './piston.ts';
import { placedTreble } from './trebleDriver.ts';

/** How far an axis passes over or under the ears, seen from the aimed point: radians, and mm where it passes them; positive over. */
export interface AxisHeight {
  readonly angle: number;
  readonly height: number;
}

/** What sets how far that may be. */
export interface AxisLimit extends AxisHeight {
  readonly by:
    | { readonly what: 'beam'; readonly driver: string; readonly frequency: number }
    | {
        readonly what: 'lobe';
        readonly between: readonly [string, string];
        readonly frequency: number;
      };
}

/** How far two drivers turn against each other between the axis and the ears, at the frequency where they meet; radians, 0 or more. */
export interface TurnToEars {
  readonly between: readonly [string, string];
  readonly frequency: number;
  readonly turn: number;
}

type Aimed = Pick<Pose, 'aimedPoint' | 'forward' | 'elevation' | 'drivers'>;

/** How far the axis passes over the ears; null where the head is not before the loudspeaker. */
export function axisHeight(aimed: Aimed, head: Vec3): AxisHeight | null {
  const { run, rise } = inPlane(aimed, head);
  if (run <= 0) return null;
  return {
    angle: aimed.elevation - Math.atan2(rise, run),
    height: run * Math.tan(aimed.elevation) - rise,
  };
}

/** Width of a step by which a lobe is followed: far narrower than the lobes of drivers on one cabinet. Radians. */
const STEP = Math.PI / 720;
const HALVINGS = 40;

/**
 * How far from the axis, on the way to the ears, the loudspeaker still sounds as on it: until its treble has left the beam
 * (3 dB at 10 kHz) or the sum at a crossover has fallen by 3 dB. Where nobody said how the drivers are lined up nothing is
 * known of their sum and the beam alone counts; `turnToEars` tells what is known of them. Null when the ears are within
 * what counts, or behind.
 */
export function axisLimit(
  speaker: Pick<Speaker, 'crossovers' | 'designPoint' | 'drivers'>,
  aimed: Aimed,
  head: Vec3,
  speed: number,
): AxisLimit | null {
  const found = axisHeight(aimed, head);
  if (found === null) return null;
  const { run, rise } = inPlane(aimed, head);
  const reach = Math.hypot(run, rise);
  const treble = placedTreble(aimed.drivers);
  /** The head turned about the aimed point, in the plumb plane of the axis, to where the axis passes it by so much. */
  const at = (angle: number): Vec3 => pointInPlane(aimed, reach, aimed.elevation - angle);
  const point = designPointOf(speaker);
  const meetings =
    point === null ? [] : speaker.crossovers.map((crossover) => meetingOf(crossover, aimed.drivers, point, speed));
  const all: { readonly by: AxisLimit['by']; readonly over: (angle: number) => boolean }[] = [
    {
      by: { what: 'beam', driver: treble.driver.name, frequency: HEAD_LIMITS.treble.frequency },
      over: leftBeam(treble),
    },
    ...meetings.map((meeting) => {
      const { between, frequency } = meeting.crossover;
      return { by: { what: 'lobe', between, frequency } as const, over: leftLobe(meeting) };
    }),
  ];
  // What is past its limit on the axis itself is no matter of how high that is.
  const limits = all.filter(({ over }) => !over(0));
  const steps = Math.ceil(Math.abs(found.angle) / STEP);
  for (let step = 1; step <= steps; step++) {
    const [inner, outer] = [(found.angle * (step - 1)) / steps, (found.angle * step) / steps];
    const left = limits.filter(({ over }) => over(outer));
    if (left.length === 0) continue;
    const [first] = left
      .map(({ by, over }) => ({ by, angle: edgeOf(over, inner, outer) }))
      .sort((a, b) => Math.abs(a.angle) - Math.abs(b.angle));
    return first ? { ...first, height: heightAt(first.angle) } : null;
  }
  return null;

  /** Where the axis then passes, over ears as far away in plan. */
  function heightAt(angle: number): number {
    return run * (Math.tan(aimed.elevation) - Math.tan(aimed.elevation - angle));
  }

  function leftBeam({ driver, position }: PlacedDriver): (angle: number) => boolean {
    const { frequency, limit } = HEAD_LIMITS.treble;
    const half = beamHalfAngle(pistonSize(pistonRadius(driver), frequency, speed), limit) ?? Math.PI;
    return (angle) => angleBetween(aimed.forward, subtract(at(angle), position)) > half;
  }

  function leftLobe(meeting: Meeting): (angle: number) => boolean {
    const ratioAt = (angle: number): number =>
      sumRatio(meeting, relativeDifference(meeting, at(angle)) * meeting.perMillimetre);
    const least = ratioAt(0) * 10 ** (-HEAD_LIMITS.crossover.limit / 20);
    return (angle) => ratioAt(angle) < least;
  }
}

/**
 * Where nobody said how the drivers are lined up: the crossover whose drivers turn most against each other on the way up or
 * down from the axis to the ears. That much is known, as any design point drops out of it; what it does to their sum is
 * not. Null where a design point is given, without crossovers, and when the ears are behind. `speed` in m/s.
 */
export function turnToEars(
  speaker: Pick<Speaker, 'crossovers' | 'designPoint' | 'drivers'>,
  aimed: Aimed,
  head: Vec3,
  speed: number,
): TurnToEars | null {
  const { run, rise } = inPlane(aimed, head);
  if (designPointOf(speaker) !== null || run <= 0) return null;
  const reach = Math.hypot(run, rise);
  const axis = pointInPlane(aimed, reach, aimed.elevation);
  const ears = pointInPlane(aimed, reach, Math.atan2(rise, run));
  const turns = speaker.crossovers.map((crossover): TurnToEars => {
    const [lower, upper] = lowerAndUpper(crossover, aimed.drivers);
    const apart = (at: Vec3): number => pathDifference(lower.acousticCentre, upper.acousticCentre, at);
    const turn = (2 * Math.PI * crossover.frequency * Math.abs(apart(ears) - apart(axis))) / (1000 * speed);
    return { between: crossover.between, frequency: crossover.frequency, turn };
  });
  return turns.sort((a, b) => b.turn - a.turn)[0] ?? null;
}

/** A point in the plumb plane of the axis, from the aimed point: along the level under the axis, and up. */
function inPlane({ aimedPoint, forward }: Aimed, point: Vec3): { readonly run: number; readonly rise: number } {
  const from = subtract(point, aimedPoint);
  const ahead = vec3(forward.x, forward.y, 0);
  return { run: dot(from, ahead) / Math.hypot(forward.x, forward.y), rise: from.z };
}

function pointInPlane({ aimedPoint, forward }: Aimed, reach: number, elevation: number): Vec3 {
  const run = (reach * Math.cos(elevation)) / Math.hypot(forward.x, forward.y);
  return vec3(
    aimedPoint.x + run * forward.x,
    aimedPoint.y + run * forward.y,
    aimedPoint.z + reach * Math.sin(elevation),
  );
}

function edgeOf(over: (angle: number) => boolean, inside: number, outside: number): number {
  let [good, bad] = [inside, outside];
  for (let halving = 0; halving < HALVINGS; halving++) {
    const middle = (good + bad) / 2;
    if (over(middle)) bad = middle;
    else good = middle;
  }
  return good;
}
