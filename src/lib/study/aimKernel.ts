import { degrees, radians } from '$lib/geometry/angle.ts';
import { headIn, headOf, posturesServed } from '$lib/layout/ears.ts';
import { placeSide } from '$lib/layout/place.ts';
import { solveTilt } from '$lib/layout/tilt.ts';
import { sideNames, type Layout, type SideName, type Speaker } from '$lib/project/project.ts';
import type { Aimed, AimedSide, Bodies } from './measure.ts';

/** The same object, written anew for each candidate: read it before the next one. */
type Writable<Of> = Of extends object ? { -readonly [Key in keyof Of]: Writable<Of[Key]> } : Of;
type SideNumbers = Writable<AimedSide>;

/** What of a layout a pair is aimed from, in the layout's own units. */
interface Numbers {
  headX: number;
  headY: number;
  earHeight: number;
  deskHeight: number;
  lift: number;
  toeDegrees: number;
  toeDistance: number;
  tiltDegrees: number;
  left: { x: number; y: number };
  right: { x: number; y: number };
}

type Setter = (numbers: Numbers, value: number) => void;

/** The numbers of a layout that the kernel sets without a new layout. */
const setters: Readonly<Record<string, Setter>> = {
  '/listener/offset': (numbers, value) => (numbers.headX = value),
  '/listener/setback': (numbers, value) => (numbers.headY = -value),
  '/listener/earHeight': (numbers, value) => (numbers.earHeight = value),
  '/stand/lift': (numbers, value) => (numbers.lift = value),
  '/aim/toe/degrees': (numbers, value) => (numbers.toeDegrees = value),
  '/aim/toe/distance': (numbers, value) => (numbers.toeDistance = value),
  '/aim/tilt/degrees': (numbers, value) => (numbers.tiltDegrees = value),
  '/placement/left/x': (numbers, value) => (numbers.left.x = value),
  '/placement/left/y': (numbers, value) => (numbers.left.y = value),
  '/placement/right/x': (numbers, value) => (numbers.right.x = value),
  '/placement/right/y': (numbers, value) => (numbers.right.y = value),
};

/** A screen that is moved leaves the aim as it is. */
const nothing: Setter = () => undefined;
const setterOf = (pointer: string): Setter | undefined =>
  pointer.startsWith('/monitors/') ? nothing : setters[pointer];

/** Aims a pair with other numbers at some pointers, a million times a second. */
export interface AimKernel {
  /** @param values One a pointer. @returns The pair, written over by the next call; null where it cannot be aimed. */
  readonly aim: (values: readonly number[]) => Pick<Aimed, 'sides' | 'heads'> | null;
}

/**
 * What `placeSide` works out of a pair, without new objects and by the closed form or Newton's method; within 1e-9 of it.
 * Null where a pointer is none that it can set, or the aim is for several postures: then `placeSide` has to do.
 */
export function aimKernel(speaker: Speaker, layout: Layout, pointers: readonly string[]): AimKernel | null {
  const set = pointers.flatMap((pointer) => setterOf(pointer) ?? []);
  if (set.length < pointers.length || posturesServed(layout).length > 0) return null;
  const { aim, stand, listener, desk, placement } = layout;
  const numbers: Numbers = {
    headX: listener.offset,
    headY: -listener.setback,
    earHeight: listener.earHeight,
    deskHeight: desk.height,
    lift: stand.lift ?? 0,
    toeDegrees: aim.toe.rule === 'as-set' ? aim.toe.degrees : 0,
    toeDistance: aim.toe.rule === 'behind-head' ? aim.toe.distance : 0,
    tiltDegrees: aim.tilt.rule === 'tilt-to-ear' ? 0 : aim.tilt.degrees,
    left: { ...placement.left },
    right: { ...placement.right },
  };
  const solvers = { left: sideSolver(speaker, layout, 'left'), right: sideSolver(speaker, layout, 'right') };
  const heads = headsOf(layout);
  const [planned] = heads;
  const pair = { heads, sides: { left: solvers.left.side, right: solvers.right.side } };
  return {
    aim: (values) => {
      for (let i = 0; i < set.length; i++) set[i]?.(numbers, values[i] ?? 0);
      planned.x = numbers.headX;
      planned.y = numbers.headY;
      planned.z = numbers.earHeight - numbers.deskHeight;
      // Of the other ways of sitting, only where the head is sideways goes with the seat.
      for (let i = 1; i < heads.length; i++) (heads[i] ?? planned).x = numbers.headX;
      return solvers.left.solve(numbers) && solvers.right.solve(numbers) ? pair : null;
    },
  };
}

type WritableVec = { x: number; y: number; z: number };

function headsOf({ listener, desk }: Layout): [WritableVec, ...WritableVec[]] {
  const others = listener.postures.map((posture) => ({ ...headIn(posture, listener, desk) }));
  return [{ ...headOf(listener, desk) }, ...others];
}

/** Past this tilt, and this elevation of the axis, the general solver decides whether there is an answer; radians. */
const STEEP = radians(50);
const STEEP_AXIS = radians(75);
const MOST_STEPS = 12;
/** Newton's method has come to rest, radians: the last step was squared by the next. */
const AT_REST = 1e-9;

function sideSolver(speaker: Speaker, layout: Layout, name: SideName) {
  const { toe: toeRule, tilt: tiltRule, through } = layout.aim;
  const flip = name === 'left' ? -1 : 1;
  const { height, offset } = aimedOf(speaker, through, name === 'left' && !speaker.mirrored);
  const { depth } = speaker;
  const rake = radians(speaker.baffleRake);
  const [sinRake, cosRake] = [Math.sin(rake), Math.cos(rake)];
  const earOffset = toeRule.rule === 'to-ear' ? layout.listener.headWidth / 2 : 0;
  const vec = (): WritableVec => ({ x: 0, y: 0, z: 0 });
  const side: SideNumbers = {
    toe: 0,
    tilt: 0,
    lift: 0,
    frontEdgeHeight: 0,
    rearEdgeHeight: 0,
    mark: vec(),
    aimedPoint: vec(),
    axis: vec(),
    miss: 0,
  };

  const toeOf = (x: number, y: number, numbers: Numbers): number => {
    if (toeRule.rule === 'straight') return 0;
    if (toeRule.rule === 'as-set') return radians(numbers.toeDegrees);
    const [toX, toY] = [x + earOffset, toeRule.rule === 'behind-head' ? y - numbers.toeDistance : y];
    const square = toX * toX + toY * toY - offset * offset;
    if (square <= 0) return NaN;
    const turned = Math.atan2(-toX, -toY) - Math.atan2(offset, Math.sqrt(square));
    return turned <= -Math.PI ? turned + 2 * Math.PI : turned > Math.PI ? turned - 2 * Math.PI : turned;
  };

  /** By Newton's method from level on: the front rises with the tilt. */
  const tiltUp = (over: number, run: number): number => {
    let tilt = 0;
    let [sin, cos] = [sinRake, cosRake];
    for (let step = 0; step < MOST_STEPS; step++) {
      const [sinTilt, cosTilt] = [sin * cosRake - cos * sinRake, cos * cosRake + sin * sinRake];
      const error = depth * sinTilt + (height + run * sin) / cos - over;
      const by = error / (depth * cosTilt + (height * sin + run) / (cos * cos));
      tilt -= by;
      if (Math.abs(by) < AT_REST) return tilt;
      if (!(Math.abs(tilt) < STEEP)) return NaN;
      sin = Math.sin(tilt + rake);
      cos = Math.cos(tilt + rake);
    }
    return NaN;
  };

  const tiltOf = (lift: number, run: number, ear: number): number => {
    const over = ear - lift;
    if (run <= height) return NaN;
    if ((height + run * sinRake) / cosRake < over) return tiltUp(over, run);
    const square = (over - height) * (over + height) + run * run;
    return Math.atan2(Math.sqrt(Math.max(0, square)), height) - Math.atan2(run, over) - rake;
  };

  const solve = (numbers: Numbers): boolean => {
    const mark = numbers[name];
    const [headX, headY, ear] = [flip * numbers.headX, numbers.headY, numbers.earHeight - numbers.deskHeight];
    const markX = flip * mark.x;
    const [x, y] = [headX - markX, headY - mark.y];
    const toe = toeOf(x, y, numbers);
    if (Number.isNaN(toe)) return false;
    const [sinToe, cosToe] = [Math.sin(toe), Math.cos(toe)];
    const run = -((x + earOffset) * sinToe + y * cosToe);
    let tilt = radians(numbers.tiltDegrees);
    let { lift } = numbers;
    if (tiltRule.rule === 'tilt-to-ear') tilt = tiltOf(lift, run, ear);
    if (tiltRule.rule === 'lift-to-ear' || !(Math.abs(tilt) < STEEP && Math.abs(tilt + rake) < STEEP_AXIS)) {
      const rule = tiltRule.rule === 'tilt-to-ear' ? tiltRule : { ...tiltRule, degrees: numbers.tiltDegrees };
      const solved = solveTilt({ rule, lift, depth, rake, height, run, earHeight: ear });
      if (!solved.ok) return false;
      ({ tilt, lift } = solved.value);
    }
    const [sinUp, cosUp] = [Math.sin(tilt + rake), Math.cos(tilt + rake)];
    const rise = depth * Math.sin(tilt);
    const front = lift + Math.max(0, rise);
    const [axisX, axisY] = [-sinToe * cosUp, -cosToe * cosUp];
    const pointX = markX + height * sinToe * sinUp - offset * cosToe;
    const pointY = mark.y + height * cosToe * sinUp + offset * sinToe;
    const pointZ = front + height * cosUp;
    const [fromX, fromY, fromZ] = [headX - pointX, headY - pointY, ear - pointZ];
    const crossX = fromY * sinUp - fromZ * axisY;
    const crossY = fromZ * axisX - fromX * sinUp;
    const crossZ = fromX * axisY - fromY * axisX;
    side.toe = degrees(toe);
    side.tilt = degrees(tilt);
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
  return { side, solve };
}

/** The aimed point on the baffle, where `placeSide` has it. */
function aimedOf({ drivers }: Speaker, through: Layout['aim']['through'], otherWay: boolean) {
  const named = (name: string) => {
    const driver = drivers.find((one) => one.name === name);
    if (!driver) throw new Error(`The project was not checked: it has no driver "${name}".`);
    return driver;
  };
  const sign = otherWay ? -1 : 1;
  if (typeof through === 'string') return { height: named(through).height, offset: sign * named(through).offset };
  const [a, b] = [named(through.between[0]), named(through.between[1])];
  return {
    height: a.height + (b.height - a.height) * through.fraction,
    offset: sign * (a.offset + (b.offset - a.offset) * through.fraction),
  };
}

/** A pair as the general solver aims it, and its cabinets. */
export interface GeneralPair extends Pick<Aimed, 'sides' | 'heads'> {
  readonly cabinets: Bodies['sides'];
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
    cabinets: { left: left.value, right: right.value },
  };
}
