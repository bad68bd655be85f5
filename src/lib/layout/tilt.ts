import { degrees, radians } from '$lib/geometry/angle.ts';
import { rootBetween } from '$lib/geometry/root.ts';
import { failure, success, type Result } from '$lib/project/fault.ts';
import { tilt as tiltFields } from '$lib/project/fields/aim.ts';
import { stand as standFields } from '$lib/project/fields/stand.ts';
import type { TiltRule } from '$lib/project/project.ts';
import { asDegrees, asMm, needs, onPage, says } from '$lib/project/sentence.ts';

/** What tilt and lift are solved from: one loudspeaker, toed already. mm and radians. */
export interface TiltTask {
  readonly rule: TiltRule;
  /** Given lift; null when the rule finds it. */
  readonly lift: number | null;
  readonly depth: number;
  readonly rake: number;
  /** Height of the aimed point along the baffle. */
  readonly height: number;
  /** From the mark to the target along the toed direction, in plan. */
  readonly run: number;
  /** Of the ears, over what the stand is on. */
  readonly earHeight: number;
}

export interface TiltAnswer {
  readonly tilt: number;
  readonly lift: number;
}

/** Tilts the tool will set, radians. */
export const STEEPEST = radians(tiltFields.degrees.max);
/** Past this elevation the axis runs up a wall and `tan` out of digits; radians. */
export const STEEPEST_AXIS = radians(80);

/** Height of the front bottom edge over the lowest edge: only an upward tilt raises the front. */
const frontRise = (depth: number, tilt: number): number => Math.max(0, depth * Math.sin(tilt));

/**
 * Height of the axis over the lift where, in plan, it has run `run` from the mark. The aimed point stands
 * height · cos α up and height · sin α back, so the axis is at height / cos α + run · tan α over the front edge.
 */
export function axisOverLift(
  { depth, rake, height, run }: Pick<TiltTask, 'depth' | 'rake' | 'height' | 'run'>,
  tilt: number,
): number {
  const elevation = tilt + rake;
  return frontRise(depth, tilt) + height / Math.cos(elevation) + run * Math.tan(elevation);
}

/**
 * Tilt and lift that bring the axis to ear height where it passes the target. `as-set` returns what it was given.
 *
 * No answer when the target is not in front of the baffle, when the tilt would pass ±60° (or the axis ±80°), or when the
 * lift would be under zero.
 */
export function solveTilt(task: TiltTask): Result<TiltAnswer> {
  const { rule } = task;
  switch (rule.rule) {
    case 'as-set':
      return success({ tilt: radians(rule.degrees), lift: task.lift ?? 0 });
    case 'lift-to-ear':
      return solveLift(task, radians(rule.degrees));
    case 'tilt-to-ear':
      return solveForTilt(task, task.lift ?? 0);
  }
}

/** Elevation under which the aimed point, leaning forward, would already be past the target. */
const forwardLimit = ({ run, height }: TiltTask): number =>
  height <= run ? -STEEPEST_AXIS : -Math.atan2(run, Math.sqrt((height - run) * (height + run)));

function notInFront({ run }: TiltTask): Result<never> {
  return failure({
    pointer: '/aim/toe',
    message: onPage(
      says`expected the ear in front of the baffle, got it ${asMm(-run)} behind: the axis points away from the listener, so turn the loudspeaker or move the seat`,
      says`The axis points away from the listener, whose ear is ${asMm(-run)} behind the baffle: turn the loudspeaker or move the seat`,
    ),
  });
}

function solveLift(task: TiltTask, tilt: number): Result<TiltAnswer> {
  const elevation = tilt + task.rake;
  if (task.run <= 0) return notInFront(task);
  if (Math.abs(elevation) > STEEPEST_AXIS || elevation <= forwardLimit(task)) {
    return failure({
      pointer: '/aim/tilt/degrees',
      message: needs(
        says`a tilt that keeps the ear in front of the baffle and the axis within ${asDegrees(degrees(STEEPEST_AXIS))}`,
        says`an axis at ${asDegrees(degrees(elevation))}`,
      ),
    });
  }
  const lift = task.earHeight - axisOverLift(task, tilt);
  if (lift < 0) return liftUnderZero(task, tilt, lift);
  if (lift > standFields.lift.max) {
    return failure({
      pointer: '/aim/tilt/degrees',
      message: needs(
        says`a tilt that needs a lift of at most ${asMm(standFields.lift.max)}`,
        says`${asMm(lift)} at ${asDegrees(degrees(tilt))}`,
        'tilt up more',
      ),
    });
  }
  return success({ tilt, lift });
}

function liftUnderZero(task: TiltTask, tilt: number, lift: number): Result<never> {
  const flat = solveForTilt(task, 0);
  const advice = flat.ok
    ? says`tilt at most ${asDegrees(degrees(flat.value.tilt))}`
    : 'raise the seat or lower the desk';
  return failure({
    pointer: '/aim/tilt/degrees',
    message: needs(
      says`a tilt that leaves a lift of ${asMm(0)} or more`,
      says`${asMm(lift)} at ${asDegrees(degrees(tilt))}`,
      advice,
    ),
  });
}

function solveForTilt(task: TiltTask, lift: number): Result<TiltAnswer> {
  if (task.run <= 0) return notInFront(task);
  const low = Math.max(-STEEPEST, Math.max(-STEEPEST_AXIS, forwardLimit(task)) - task.rake);
  const high = Math.min(STEEPEST, STEEPEST_AXIS - task.rake);
  const over = (tilt: number): number => lift + axisOverLift(task, tilt) - task.earHeight;
  // On this interval the axis rises strictly with the tilt, so there is one answer or none.
  if (over(low) > 0) return tooHigh(task, lift, low, over(low));
  if (over(high) < 0) return tooLow(lift, high, -over(high));
  const tilt = over(0) >= 0 && low <= 0 ? tiltDown(task, lift) : rootBetween(over, Math.max(0, low), high);
  return tilt === null || Number.isNaN(tilt) ? tooHigh(task, lift, low, over(low)) : success({ tilt, lift });
}

/**
 * With the front edge lowest, K · cos α − run · sin α = height with K = ear height − lift, which has the closed form
 * α = atan2(√(K² + run² − height²), height) − atan2(run, K); the other root looks backwards.
 */
function tiltDown({ rake, height, run, earHeight }: TiltTask, lift: number): number {
  const drop = earHeight - lift;
  const square = (drop - height) * (drop + height) + run * run;
  return Math.atan2(Math.sqrt(Math.max(0, square)), height) - Math.atan2(run, drop) - rake;
}

const tooHigh = (task: TiltTask, lift: number, tilt: number, by: number): Result<never> =>
  failure({
    pointer: '/aim/tilt',
    message: onPage(
      says`expected an ear that an axis can reach, got one at ${asMm(task.earHeight)} over what the stand is on, ${asMm(task.run)} away: even at a tilt of ${asDegrees(degrees(tilt))} the axis passes ${asMm(by)} over it, so ${lift > 0 ? 'lower the lift or move the seat back' : 'move the seat back'}`,
      says`Even at a tilt of ${asDegrees(degrees(tilt))} the axis passes ${asMm(by)} over the ear, which is ${asMm(task.earHeight)} over what the stand is on and ${asMm(task.run)} away: ${lift > 0 ? 'lower the lift or move the seat back' : 'move the seat back'}`,
    ),
  });

const tooLow = (lift: number, tilt: number, by: number): Result<never> =>
  failure({
    pointer: '/aim/tilt',
    message: onPage(
      says`expected a tilt of at most ${asDegrees(degrees(tilt))}, got an ear ${asMm(by)} over the axis even then: set the lift to ${asMm(lift + by)} or more, or move the seat back`,
      says`Even a tilt of ${asDegrees(degrees(tilt))} leaves the ear ${asMm(by)} over the axis: set the lift to ${asMm(lift + by)} or more, or move the seat back`,
    ),
  });
