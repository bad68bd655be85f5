import { distance, type Vec3 } from '$lib/geometry/point.ts';
import { headIn, headOf, posturesServed } from '$lib/layout/ears.ts';
import { placeSide } from '$lib/layout/place.ts';
import { success, type Result } from '$lib/project/fault.ts';
import type { Layout, Project, SideName } from '$lib/project/project.ts';
import { asStood } from '$lib/project/stood.ts';
import { fitStanding, type Fitted } from './fitStanding.ts';
import { mendByMoving, mendByTurning, type Act } from './mend.ts';
import { nextReading, type Advice } from './nextReading.ts';
import { sortOut } from './odd.ts';
import type { Surroundings } from './reading.ts';
import { residualsOf, type ReadingResidual } from './residuals.ts';
import { isKnown, spreadOf, type Ellipse, type Spread } from './spread.ts';
import { cabinetOf, passOf, plannedStanding, type Cabinet, type Pass, type Standing } from './standing.ts';
import { isTaken, type Taken } from './taken.ts';

/** One stand as planned: what its readings are held against. Desk frame, mm. */
export interface Task {
  readonly cabinet: Cabinet;
  readonly planned: Standing;
  readonly around: Surroundings;
  /** The seat's head. */
  readonly head: Vec3;
  /**
   * Where the plan's axis passes nearest to that head, and what a stand is mended to: the head itself, unless the layout aims
   * past it by its rules or serves several postures at once.
   */
  readonly target: Vec3;
  /** How far the plan aims past the seat's head. */
  readonly past: number;
  /** The heads of the other postures that the aim is for. */
  readonly served: readonly { readonly name: string; readonly head: Vec3 }[];
}

/** One loudspeaker as its readings have it, and what to do about it. Angles in radians. */
export interface SideProof extends Task {
  readonly side: SideName;
  readonly standing: Standing;
  readonly spread: Spread;
  /** Of the seat's head. */
  readonly pass: Pass;
  /** Of the target. */
  readonly off: Pass;
  /** Of the heads of `served`, in their order. */
  readonly passes: readonly Pass[];
  /** Whether the readings say where the axis passes; if not, `next` tells what to read. */
  readonly known: boolean;
  /** Each with its place in the file's list: of what nobody has read yet there is none. */
  readonly residuals: readonly (ReadingResidual & { readonly place: number })[];
  /** Places of readings left out since they contradict all the rest, and of those of which some must be wrong. */
  readonly odd: readonly number[];
  readonly unclear: readonly number[];
  /** Whether the stand was taken as level from side to side, as nothing was read of it. */
  readonly levelTaken: boolean;
  readonly next: Advice | null;
  /** Whether the readings cannot tell the axis from one through the target: then there is nothing to mend. */
  readonly leave: boolean;
  /** A card and a turn, or a card and a move, that bring the axis through the target; null where neither can. */
  readonly byTurning: readonly Act[] | null;
  readonly byMoving: readonly Act[] | null;
}

/** How a stand is to stand, and where its axis is to go. No answer: as `placeSide` has none. */
export function taskOf(project: Project, layout: Layout, side: SideName): Result<Task> {
  const pose = placeSide(project.speaker, layout, side);
  if (!pose.ok) return pose;
  const { listener, desk } = layout;
  const cabinet = cabinetOf(asStood(project.speaker), pose.value);
  const planned = plannedStanding(pose.value);
  const head = headOf(listener, desk);
  const target = passOf(cabinet, planned, head).at;
  return success({
    cabinet,
    planned,
    around: { head, pad: layout.stand.pad },
    head,
    target,
    past: distance(head, target),
    served: posturesServed(layout).map((one) => ({ name: one.name, head: headIn(one, layout, side) })),
  });
}

/**
 * What the readings of one finished stand say: how its cabinet stands, where its axis passes the heads of the layout and what
 * would mend it. Null when nothing has been read of that side. No answer: as `placeSide` has none.
 */
export function proveSide(project: Project, layout: Layout, side: SideName): Result<SideProof | null> {
  const listed = layout.built?.sides[side].readings ?? [];
  const places = listed.flatMap((reading, place) => (isTaken(reading) ? [place] : []));
  const readings = listed.filter(isTaken);
  const task = taskOf(project, layout, side);
  if (!task.ok) return task;
  const { cabinet, planned, around, head, target, served } = task.value;
  const fit = (some: readonly Taken[]): Fitted | null => fitStanding(some, cabinet, planned, around);
  const sorted = readings.length === 0 ? null : sortOut(readings, fit);
  if (!sorted) return success(null);
  const { fitted, odd, unclear } = sorted;
  const { standing } = fitted;
  const spread = spreadOf(fitted, cabinet, head);
  const known = isKnown(spread);
  const off = passOf(cabinet, standing, target);
  const listedAt = (index: number): number => places[index] ?? index;
  return success({
    ...task.value,
    side,
    standing,
    spread,
    pass: passOf(cabinet, standing, head),
    off,
    passes: served.map((one) => passOf(cabinet, standing, one.head)),
    known,
    residuals: residualsOf(readings, cabinet, standing, around).map((one, i) => ({ ...one, place: listedAt(i) })),
    odd: odd.map(listedAt),
    unclear: unclear.map(listedAt),
    levelTaken: fitted.levelTaken,
    next: nextReading(fitted, cabinet, around, head),
    leave: known && within(spread.pass, off),
    byTurning: known ? mendByTurning(cabinet, standing, target) : null,
    byMoving: known ? mendByMoving(cabinet, standing, target) : null,
  });
}

/** Whether what is aimed at lies in the ellipse round the pass. */
function within({ major, minor, turn }: Ellipse, { right, over }: Pass): boolean {
  const [cos, sin] = [Math.cos(turn), Math.sin(turn)];
  return ((right * cos + over * sin) / major) ** 2 + ((over * cos - right * sin) / minor) ** 2 <= 1;
}
