import { degrees, radians } from '$lib/geometry/angle.ts';
import { headIn, headOf, posturesServed } from '$lib/layout/ears.ts';
import { aimedPointOf, driversOn, placeSide } from '$lib/layout/place.ts';
import type { Pose } from '$lib/layout/pose.ts';
import { solveTilt } from '$lib/layout/tilt.ts';
import type { StoodSpeaker } from '$lib/project/stood.ts';
import { sideNames, type Layout, type SideName, type Speaker } from '$lib/project/project.ts';
import { DESK } from '$lib/project/surface.ts';
import type { Aimed, AimedSide } from './measure.ts';

/** What of a layout a pair is aimed from, in the layout's own units. */
interface Numbers {
  headX: number;
  headY: number;
  earHeight: number;
  readonly deskHeight: number;
  lift: number;
  toeDegrees: number;
  toeDistance: number;
  tiltDegrees: number;
  readonly left: { x: number; y: number };
  readonly right: { x: number; y: number };
}

type Slot = 'headX' | 'setback' | 'earHeight' | 'lift' | 'toeDegrees' | 'toeDistance' | 'tiltDegrees' | 'leftX' | 'leftY' | 'rightX' | 'rightY' | 'nothing'; // prettier-ignore

/** The numbers of a layout that the kernel sets without a new layout. */
const slots: Readonly<Record<string, Slot>> = {
  '/listener/offset': 'headX',
  '/listener/setback': 'setback',
  '/listener/earHeight': 'earHeight',
  '/stand/lift': 'lift',
  '/aim/toe/degrees': 'toeDegrees',
  '/aim/toe/distance': 'toeDistance',
  '/aim/tilt/degrees': 'tiltDegrees',
  '/placement/left/x': 'leftX',
  '/placement/left/y': 'leftY',
  '/placement/right/x': 'rightX',
  '/placement/right/y': 'rightY',
};

/** A screen that is moved leaves the aim as it is. */
const slotOf = (pointer: string): Slot | undefined => (pointer.startsWith('/monitors/') ? 'nothing' : slots[pointer]);

/** A switch takes a fifth of the time of a table of setters. */
function put(numbers: Numbers, slot: Slot | undefined, value: number): void {
  switch (slot) {
    case 'headX':
      numbers.headX = value;
      return;
    case 'setback':
      numbers.headY = -value;
      return;
    case 'earHeight':
      numbers.earHeight = value;
      return;
    case 'lift':
      numbers.lift = value;
      return;
    case 'toeDegrees':
      numbers.toeDegrees = value;
      return;
    case 'toeDistance':
      numbers.toeDistance = value;
      return;
    case 'tiltDegrees':
      numbers.tiltDegrees = value;
      return;
    case 'leftX':
      numbers.left.x = value;
      return;
    case 'leftY':
      numbers.left.y = value;
      return;
    case 'rightX':
      numbers.right.x = value;
      return;
    case 'rightY':
      numbers.right.y = value;
  }
}

function numbersOf({ aim, stand, listener, desk, placement }: Layout): Numbers {
  return {
    headX: listener.offset,
    headY: -listener.setback,
    earHeight: listener.earHeight,
    deskHeight: desk.height,
    lift: stand.lift ?? 0,
    toeDegrees: aim.toe.rule === 'as-set' ? aim.toe.degrees : 0,
    toeDistance: aim.toe.rule === 'behind-head' ? aim.toe.distance : 0,
    tiltDegrees: aim.tilt.rule === 'tilt-to-ear' ? 0 : aim.tilt.degrees,
    left: { x: placement.left.x, y: placement.left.y },
    right: { x: placement.right.x, y: placement.right.y },
  };
}

/** Aims a pair with other numbers at some pointers, a million times a second. */
export interface AimKernel {
  /** @param values One a pointer. @returns The pair, written over by the next call; null where it cannot be aimed. */
  readonly aim: (values: readonly number[]) => Pick<Aimed, 'sides' | 'heads'> | null;
}

/**
 * What `placeSide` works out of a pair, without new objects and by the closed form or Newton's method; within 1e-9 of it.
 * Null where a pointer is none that it can set, the aim is for several postures or a stand is off the desk: then `placeSide`
 * has to do.
 */
export function aimKernel(speaker: StoodSpeaker, layout: Layout, pointers: readonly string[]): AimKernel | null {
  const set = pointers.flatMap((pointer) => slotOf(pointer) ?? []);
  if (set.length < pointers.length || posturesServed(layout).length > 0) return null;
  if (sideNames.some((side) => layout.placement[side].on !== DESK)) return null;
  const numbers = numbersOf(layout);
  const left = new SolvedSide();
  const right = new SolvedSide();
  const [solveLeft, solveRight] = [
    sideSolver(speaker, layout, 'left', left),
    sideSolver(speaker, layout, 'right', right),
  ];
  const isPair = sameAim(speaker, layout.aim.through);
  const heads = headsOf(layout);
  const { postures } = layout.listener;
  const [planned] = heads;
  const pair = { heads, sides: { left, right } };
  return {
    aim: (values) => {
      for (let i = 0; i < set.length; i++) put(numbers, set[i], values[i] ?? 0);
      planned.x = numbers.headX;
      planned.y = numbers.headY;
      planned.z = numbers.earHeight - numbers.deskHeight;
      // Of the other ways of sitting, only where the head is sideways goes with the seat.
      for (let i = 1; i < heads.length; i++) (heads[i] ?? planned).x = numbers.headX + (postures[i - 1]?.offset ?? 0);
      if (!solveRight(numbers)) return null;
      if (!isPair || !isMirrored(numbers)) return solveLeft(numbers) ? pair : null;
      left.mirror(right);
      return pair;
    },
  };
}

/** Whether the left loudspeaker stands to the head as the mirror image of the right one does. */
const isMirrored = ({ headX, left, right }: Numbers): boolean =>
  headX === 0 && left.x === -right.x && left.y === right.y;

type WritableVec = { x: number; y: number; z: number };

function headsOf(layout: Layout): [WritableVec, ...WritableVec[]] {
  const { listener, desk } = layout;
  // Both loudspeakers are on the desk.
  const others = listener.postures.map((posture) => ({ ...headIn(posture, layout, 'right') }));
  return [{ ...headOf(listener, desk) }, ...others];
}

/** Past this tilt, and this elevation of the axis, the general solver decides whether there is an answer; cosines of 50° and 75°. */
const STEEP = Math.cos(radians(50));
const STEEP_AXIS = Math.cos(radians(75));
const MOST_STEPS = 12;
/** The last step of Newton's method, in the tangent of the elevation: what it leaves is about its square. */
const AT_REST = 1e-7;

/** A side as it is aimed, written over each time. Angles are made where they are asked for: that takes as long as the rest. */
class SolvedSide implements AimedSide {
  readonly mark = { x: 0, y: 0, z: 0 };
  readonly aimedPoint = { x: 0, y: 0, z: 0 };
  readonly axis = { x: 0, y: 0, z: 0 };
  lift = 0;
  frontEdgeHeight = 0;
  rearEdgeHeight = 0;
  miss = 0;
  sinToe = 0;
  cosToe = 1;
  sinTilt = 0;
  cosTilt = 1;

  get toe(): number {
    return degrees(Math.atan2(this.sinToe, this.cosToe));
  }

  get tilt(): number {
    return degrees(Math.atan2(this.sinTilt, this.cosTilt));
  }

  /** As the mirror image in x = 0 of another. */
  mirror(of: SolvedSide): void {
    mirrorInto(this.mark, of.mark);
    mirrorInto(this.aimedPoint, of.aimedPoint);
    mirrorInto(this.axis, of.axis);
    this.lift = of.lift;
    this.frontEdgeHeight = of.frontEdgeHeight;
    this.rearEdgeHeight = of.rearEdgeHeight;
    this.miss = of.miss;
    this.sinToe = of.sinToe;
    this.cosToe = of.cosToe;
    this.sinTilt = of.sinTilt;
    this.cosTilt = of.cosTilt;
  }
}

function mirrorInto(to: WritableVec, from: WritableVec): void {
  to.x = -from.x;
  to.y = from.y;
  to.z = from.z;
}

/** Aims one side with the numbers of a layout; false where it cannot be aimed. Sines and cosines come from the sides of triangles. */
function sideSolver(
  speaker: StoodSpeaker,
  layout: Layout,
  name: SideName,
  side: SolvedSide,
): (numbers: Numbers) => boolean {
  const { toe: toeRule, tilt: tiltRule, through } = layout.aim;
  const flip = name === 'left' ? -1 : 1;
  const { height, offset } = aimedPointOf(through, driversOn(speaker, name));
  const { depth } = speaker;
  const rake = radians(speaker.baffleRake);
  const [sinRake, cosRake] = [Math.sin(rake), Math.cos(rake)];
  const earOffset = toeRule.rule === 'to-ear' ? layout.listener.headWidth / 2 : 0;
  const isTurnedAsSet = toeRule.rule === 'straight' || toeRule.rule === 'as-set';
  const isTiltedToEar = tiltRule.rule === 'tilt-to-ear';
  const isLifted = tiltRule.rule === 'lift-to-ear';

  const solve = solverOfSlope({ depth, height, sinRake, cosRake });

  return (numbers) => {
    const mark = numbers[name];
    const [headX, headY, ear] = [flip * numbers.headX, numbers.headY, numbers.earHeight - numbers.deskHeight];
    const markX = flip * mark.x;
    const [toX, toY] = [headX - markX + earOffset, headY - mark.y];
    let sinToe = 0;
    let cosToe = 1;
    if (isTurnedAsSet) {
      const set = radians(numbers.toeDegrees);
      sinToe = Math.sin(set);
      cosToe = Math.cos(set);
    } else {
      const farY = toY - numbers.toeDistance;
      const away = toX * toX + farY * farY;
      const level = away - offset * offset;
      if (!(level > 0)) return false;
      const root = Math.sqrt(level);
      // The difference of two angles: the bearing of the target, and what the offset takes off it.
      sinToe = (offset * farY - root * toX) / away;
      cosToe = -(root * farY + offset * toX) / away;
    }
    const run = -(toX * sinToe + toY * cosToe);
    let { lift } = numbers;
    let cosUp = 1;
    let sinUp = 0;
    if (isTiltedToEar) {
      const slope = solve(ear - lift, run);
      cosUp = 1 / Math.sqrt(1 + slope * slope);
      sinUp = slope * cosUp;
    } else {
      const set = radians(numbers.tiltDegrees) + rake;
      sinUp = Math.sin(set);
      cosUp = Math.cos(set);
    }
    if (isLifted || !(cosUp > STEEP_AXIS && cosUp * cosRake + sinUp * sinRake > STEEP)) {
      const rule = isTiltedToEar ? tiltRule : { ...tiltRule, degrees: numbers.tiltDegrees };
      const solved = solveTilt({ rule, lift, depth, rake, height, run, earHeight: ear });
      if (!solved.ok) return false;
      ({ lift } = solved.value);
      sinUp = Math.sin(solved.value.tilt + rake);
      cosUp = Math.cos(solved.value.tilt + rake);
    }
    const sinTilt = sinUp * cosRake - cosUp * sinRake;
    const rise = depth * sinTilt;
    const front = lift + Math.max(0, rise);
    const [axisX, axisY] = [-sinToe * cosUp, -cosToe * cosUp];
    const pointX = markX + height * sinToe * sinUp - offset * cosToe;
    const pointY = mark.y + height * cosToe * sinUp + offset * sinToe;
    const pointZ = front + height * cosUp;
    const [fromX, fromY, fromZ] = [headX - pointX, headY - pointY, ear - pointZ];
    const crossX = fromY * sinUp - fromZ * axisY;
    const crossY = fromZ * axisX - fromX * sinUp;
    const crossZ = fromX * axisY - fromY * axisX;
    side.sinToe = sinToe;
    side.cosToe = cosToe;
    side.sinTilt = sinTilt;
    side.cosTilt = cosUp * cosRake + sinUp * sinRake;
    side.lift = lift;
    side.frontEdgeHeight = front;
    side.rearEdgeHeight = front - rise;
    side.mark.x = mark.x;
    side.mark.y = mark.y;
    side.aimedPoint.x = flip * pointX;
    side.aimedPoint.y = pointY;
    side.aimedPoint.z = pointZ;
    side.axis.x = flip * axisX;
    side.axis.y = axisY;
    side.axis.z = sinUp;
    side.miss = Math.sqrt(crossX * crossX + crossY * crossY + crossZ * crossZ);
    return true;
  };
}

interface SlopeTask {
  readonly depth: number;
  /** Of the aimed point along the baffle. */
  readonly height: number;
  readonly sinRake: number;
  readonly cosRake: number;
}

/**
 * The tangent of the elevation at which an axis is `over` higher than the lift after a `run`, mm. NaN where the general
 * solver has to say whether there is one.
 */
function solverOfSlope({ depth, height, sinRake, cosRake }: SlopeTask): (over: number, run: number) => number {
  const tanRake = sinRake / cosRake;

  /** By Newton's method from level on: the front rises with the tilt. */
  const tiltedUp = (over: number, run: number): number => {
    let slope = tanRake;
    for (let step = 0; step < MOST_STEPS; step++) {
      const square = 1 + slope * slope;
      const cos = 1 / Math.sqrt(square);
      const [sinTilt, cosTilt] = [(slope * cosRake - sinRake) * cos, (cosRake + slope * sinRake) * cos];
      const error = depth * sinTilt + height * cos * square + run * slope - over;
      const by = error / ((depth * cosTilt * cos + height * slope) * cos + run);
      slope -= by;
      if (Math.abs(by) < AT_REST) return slope;
    }
    return NaN;
  };

  return (over, run) => {
    if (run <= height) return NaN;
    if ((height + run * sinRake) / cosRake < over) return tiltedUp(over, run);
    // The difference of two angles, atan(root / height) − atan(run / over).
    const root = Math.sqrt(Math.max(0, (over - height) * (over + height) + run * run));
    const across = height * over + root * run;
    return across > 0 ? (root * over - height * run) / across : NaN;
  };
}

/** The aimed point on the baffle, where `placeSide` has it. */
/** Whether both cabinets are aimed alike: mirror images are, and identical ones through a point that has no other side. */
function sameAim(speaker: StoodSpeaker, through: Layout['aim']['through']): boolean {
  const [left, right] = [
    aimedPointOf(through, driversOn(speaker, 'left')),
    aimedPointOf(through, driversOn(speaker, 'right')),
  ];
  return left.height === right.height && left.offset === right.offset;
}

/** A pair as the general solver aims it. */
export interface GeneralPair extends Pick<Aimed, 'sides' | 'heads'> {
  readonly poses: Readonly<Record<SideName, Pose>>;
}

/** The same by the general solver, with a layout of its own, to the last digit of the plan. */
export function aimPair(speaker: Speaker, layout: Layout): GeneralPair | null {
  const [left, right] = sideNames.map((side) => placeSide(speaker, layout, side));
  if (!left?.ok || !right?.ok) return null;
  const of = ({ value: pose }: typeof left): AimedSide => ({
    toe: degrees(pose.toe),
    tilt: degrees(pose.tilt),
    lift: pose.lift,
    frontEdgeHeight: pose.frontEdgeHeight,
    rearEdgeHeight: pose.rearEdgeHeight,
    mark: pose.mark,
    aimedPoint: pose.aimedPoint,
    axis: pose.forward,
    miss: pose.miss,
  });
  return {
    heads: headsOf(layout),
    sides: { left: of(left), right: of(right) },
    poses: { left: left.value, right: right.value },
  };
}
