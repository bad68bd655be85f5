import { radians } from '$lib/geometry/angle.ts';
import {
  add,
  along,
  angleBetween,
  cross,
  distance,
  length,
  mirrorX,
  scale,
  subtract,
  vec3,
  type Vec3,
} from '$lib/geometry/point.ts';
import { baffleLength, topDepth } from '$lib/project/cabinet.ts';
import { success, type Fault, type Result } from '$lib/project/fault.ts';
import type { Driver, Layout, SideName, Speaker } from '$lib/project/project.ts';
import { says } from '$lib/project/sentence.ts';
import { standsAt } from '$lib/project/surface.ts';
import { asStood, laidOtherWay, type StoodSpeaker } from '$lib/project/stood.ts';
import { headIn, headOf, posturesServed } from './ears.ts';
import type { PlacedDriver, Pose } from './pose.ts';
import { solveSharedAim, type Served, type SharedAim } from './sharedAim.ts';
import { solveTilt } from './tilt.ts';
import { solveToe } from './toe.ts';

/** What of a layout an aim is made from. */
export type AimedLayout = Pick<Layout, 'desk' | 'listener' | 'surfaces' | 'placement' | 'aim'> & {
  readonly stand: Pick<Layout['stand'], 'lift'>;
};

/**
 * Aims one loudspeaker: toe, tilt and lift by the layout's rules, and where everything on it then stands. The left one
 * is solved as a right one in a mirrored room and mirrored back, so mirrored rooms give mirrored answers to the last
 * digit. An aim for several postures is solved for all of them.
 *
 * No answer: the faults of `solveToe`, `solveTilt` and `solveSharedAim`, with pointers below the layout.
 *
 * @param scene The layout as it is in a posture, where that is what is asked for: aimed as in the layout, it stands as there.
 */
export function placeSide(given: Speaker, layout: AimedLayout, side: SideName, scene = layout): Result<Pose> {
  const speaker = asStood(given);
  const flip = side === 'left' ? mirrorX : (v: Vec3): Vec3 => v;
  const head = flip(headOf(layout.listener, layout.desk));
  const { x, y } = layout.placement[side];
  const mark = flip(vec3(x, y, standsAt(layout, side)));
  const drivers = driversOn(speaker, side);
  const aimed = aimedPointOf(layout.aim.through, drivers);
  const found = (posturesServed(layout).length > 0 ? sharedAim : plainAim)({
    side,
    speaker,
    layout,
    flip,
    head,
    mark,
    aimed,
  });
  if (!found.ok) return onSide(side, found.faults);
  const stood =
    scene === layout
      ? { head, mark }
      : { head: flip(headOf(scene.listener, scene.desk)), mark: flip(vec3(x, y, standsAt(scene, side))) };
  return success(poseOf({ speaker, drivers, aimed, side, flip, ...stood, ...found.value }));
}

/** A loudspeaker that is to be aimed, seen as a right one. */
interface Unaimed {
  readonly side: SideName;
  readonly speaker: Speaker;
  readonly layout: AimedLayout;
  readonly flip: (v: Vec3) => Vec3;
  readonly head: Vec3;
  readonly mark: Vec3;
  readonly aimed: OnBaffle;
}

/** Through the head of the seat, or past it as the rules say. */
function plainAim({ speaker, layout, head, mark, aimed }: Unaimed): Result<SharedAim> {
  const toHead = subtract(head, mark);
  const earOffset = layout.listener.headWidth / 2;
  const { toe: toeRule, tilt: tiltRule } = layout.aim;
  const toe = solveToe({ rule: toeRule, head: toHead, earOffset, inboard: aimed.offset });
  if (!toe.ok) return toe;
  const rearLevel = vec3(Math.sin(toe.value), Math.cos(toe.value), 0);
  const target = toeRule.rule === 'to-ear' ? vec3(toHead.x + earOffset, toHead.y, 0) : toHead;
  const solved = solveTilt({
    rule: tiltRule,
    lift: layout.stand.lift ?? null,
    depth: speaker.depth,
    rake: radians(speaker.baffleRake),
    height: aimed.height,
    run: -(target.x * rearLevel.x + target.y * rearLevel.y),
    earHeight: toHead.z,
  });
  return solved.ok ? success({ toe: toe.value, ...solved.value }) : solved;
}

/**
 * For the seat and other postures at once. What the rules set stays as they set it; a toe to the head or the ear, the tilt
 * to the ear and the lift to the ear are found for all. With a toe to the ear, the ear on the loudspeaker's side is what
 * counts of each head. A toe that meets behind the head does so behind the seat's.
 */
function sharedAim({ side, speaker, layout, flip, head, mark, aimed }: Unaimed): Result<SharedAim> {
  const { aim, listener, stand } = layout;
  const earOffset = listener.headWidth / 2;
  const isOpen = aim.toe.rule === 'to-head' || aim.toe.rule === 'to-ear';
  const toe = isOpen
    ? success(null)
    : solveToe({ rule: aim.toe, head: subtract(head, mark), earOffset, inboard: aimed.offset });
  if (!toe.ok) return toe;
  const served = (from: Vec3, weight: number): Served => ({
    from: subtract(aim.toe.rule === 'to-ear' ? vec3(from.x + earOffset, from.y, from.z) : from, mark),
    weight,
  });
  const set = {
    toe: toe.value,
    tilt: aim.tilt.rule === 'tilt-to-ear' ? null : radians(aim.tilt.degrees),
    lift: aim.tilt.rule === 'lift-to-ear' ? null : (stand.lift ?? 0),
  };
  const { toe: turned, tilt, lift } = set;
  if (turned !== null && tilt !== null && lift !== null) return success({ toe: turned, tilt, lift });
  return solveSharedAim({
    served: [
      served(head, SEAT_WEIGHT),
      ...posturesServed(layout).map((posture) => served(flip(headIn(posture, layout, side)), posture.weight)),
    ],
    by: aim.over?.by ?? 'worst',
    depth: speaker.depth,
    rake: radians(speaker.baffleRake),
    height: aimed.height,
    offset: aimed.offset,
    ...set,
  });
}

/** What the seat counts in a mean: the postures' weights are in shares of it. */
const SEAT_WEIGHT = 1;

const onSide = (side: SideName, faults: readonly Fault[]): Result<never> => ({
  ok: false,
  faults: faults.map(({ pointer, message }) => ({ pointer, message: says`${message} (${side} loudspeaker)` })),
});

/**
 * The drivers of one side. Of an identical cabinet on the left, what was inboard is outboard; of one on its side, what was
 * above the middle is below it.
 */
export const driversOn = (speaker: Pick<StoodSpeaker, 'mirrored' | 'drivers' | 'height' | 'laid'>, side: SideName) => {
  if (side !== 'left' || speaker.mirrored) return speaker.drivers;
  return speaker.drivers.map(speaker.laid ? (driver) => laidOtherWay(driver, speaker) : otherWay);
};

const otherWay = (driver: Driver): Driver => ({ ...driver, offset: -driver.offset });

/** A point on the baffle, as a driver's centre is given. */
export interface OnBaffle {
  readonly height: number;
  readonly offset: number;
}

/** The point on the baffle that the axis runs through. */
export function aimedPointOf(through: Layout['aim']['through'], drivers: readonly Driver[]): OnBaffle {
  const named = (name: string): OnBaffle => {
    const driver = drivers.find((one) => one.name === name);
    if (!driver) throw new Error(`The project was not checked: it has no driver "${name}".`);
    return driver;
  };
  if (typeof through === 'string') return named(through);
  const [a, b] = [named(through.between[0]), named(through.between[1])];
  return {
    height: a.height + (b.height - a.height) * through.fraction,
    offset: a.offset + (b.offset - a.offset) * through.fraction,
  };
}

interface Solved {
  readonly speaker: StoodSpeaker;
  readonly drivers: readonly Driver[];
  readonly aimed: OnBaffle;
  readonly side: SideName;
  readonly flip: (v: Vec3) => Vec3;
  readonly head: Vec3;
  readonly mark: Vec3;
  readonly toe: number;
  readonly tilt: number;
  readonly lift: number;
}

function poseOf({ speaker, drivers, aimed, side, flip, head, mark, toe, tilt, lift }: Solved): Pose {
  const elevation = tilt + radians(speaker.baffleRake);
  const [sinToe, cosToe, sinUp, cosUp] = [Math.sin(toe), Math.cos(toe), Math.sin(elevation), Math.cos(elevation)];
  const forward = vec3(-sinToe * cosUp, -cosToe * cosUp, sinUp);
  const inboard = vec3(-cosToe, sinToe, 0);
  const up = vec3(sinToe * sinUp, cosToe * sinUp, cosUp);
  const rearLevel = vec3(sinToe, cosToe, 0);
  const rearSlope = vec3(sinToe * Math.cos(tilt), cosToe * Math.cos(tilt), -Math.sin(tilt));
  const bottomNormal = vec3(sinToe * Math.sin(tilt), cosToe * Math.sin(tilt), Math.cos(tilt));
  const sink = speaker.depth * Math.sin(tilt);
  const frontEdgeHeight = lift + Math.max(0, sink);
  const frontEdge = vec3(mark.x, mark.y, mark.z + frontEdgeHeight);
  const onBaffle = ({ height, offset }: OnBaffle): Vec3 => along(along(frontEdge, up, height), inboard, offset);
  const aimedPoint = onBaffle(aimed);

  const placed = (driver: Driver): PlacedDriver => {
    const position = onBaffle(driver);
    const acousticCentre = along(position, forward, -driver.acousticDepth);
    return {
      driver,
      position: flip(position),
      acousticCentre: flip(acousticCentre),
      distance: distance(acousticCentre, head),
      offAxis: angleBetween(forward, subtract(head, position)),
    };
  };
  const fromAimed = subtract(head, aimedPoint);
  return {
    side,
    mark: flip(mark),
    toe,
    tilt,
    elevation,
    lift,
    frontEdgeHeight,
    rearEdgeHeight: lift + Math.max(0, -sink),
    forward: flip(forward),
    inboard: flip(inboard),
    up: flip(up),
    rearLevel: flip(rearLevel),
    rearSlope: flip(rearSlope),
    bottomNormal: flip(bottomNormal),
    aimedPoint: flip(aimedPoint),
    miss: length(cross(fromAimed, forward)),
    drivers: drivers.map(placed),
    cabinet: (speaker.laid
      ? speaker.laid.corners.map((at) =>
          along(along(along(frontEdge, inboard, at.x), rearSlope, at.y), bottomNormal, at.z),
        )
      : cabinetCorners(speaker, frontEdge, inboard, rearSlope, up)
    ).map(flip),
  };
}

function cabinetCorners(speaker: Speaker, frontEdge: Vec3, inboard: Vec3, rearSlope: Vec3, up: Vec3): Vec3[] {
  const half = scale(inboard, speaker.width / 2);
  const frontTop = along(frontEdge, up, baffleLength(speaker));
  const rear = along(frontEdge, rearSlope, speaker.depth);
  const rearTop = along(frontTop, rearSlope, topDepth(speaker));
  const round = (front: Vec3, back: Vec3): Vec3[] => [
    subtract(front, half),
    add(front, half),
    add(back, half),
    subtract(back, half),
  ];
  return [...round(frontEdge, rear), ...round(frontTop, rearTop)];
}
