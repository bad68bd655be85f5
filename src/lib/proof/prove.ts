import { headOf } from '$lib/layout/ears.ts';
import { placeSide } from '$lib/layout/place.ts';
import { success, type Result } from '$lib/project/fault.ts';
import type { Layout, Project, Reading, SideName } from '$lib/project/project.ts';
import { fitStanding, type Fitted } from './fitStanding.ts';
import { mendByMoving, mendByTurning, type Act } from './mend.ts';
import { nextReading, type Advice } from './nextReading.ts';
import { sortOut } from './odd.ts';
import { residualsOf, type ReadingResidual } from './residuals.ts';
import { isKnown, spreadOf, type Ellipse, type Spread } from './spread.ts';
import { cabinetOf, passOf, plannedStanding, type Cabinet, type Pass, type Standing } from './standing.ts';

/** One loudspeaker as its readings have it, and what to do about it. Angles in radians. */
export interface SideProof {
  readonly side: SideName;
  readonly cabinet: Cabinet;
  readonly planned: Standing;
  readonly standing: Standing;
  readonly spread: Spread;
  readonly pass: Pass;
  /** Whether the readings say where the axis passes; if not, `next` tells what to read. */
  readonly known: boolean;
  readonly residuals: readonly ReadingResidual[];
  /** Places of readings left out since they contradict all the rest, and of those of which some must be wrong. */
  readonly odd: readonly number[];
  readonly unclear: readonly number[];
  /** Whether the stand was taken as level from side to side, as nothing was read of it. */
  readonly levelTaken: boolean;
  readonly next: Advice | null;
  /** Whether the readings cannot tell the axis from one through the head: then there is nothing to mend. */
  readonly leave: boolean;
  /** A card and a turn, or a card and a move, that bring the axis through the head; null where neither can. */
  readonly byTurning: readonly Act[] | null;
  readonly byMoving: readonly Act[] | null;
}

/**
 * What the readings of one finished stand say: how its cabinet stands, where its axis passes the head of the layout and what
 * would mend it. Null when there are no readings of that side. No answer: as `placeSide` has none.
 */
export function proveSide(project: Project, layout: Layout, side: SideName): Result<SideProof | null> {
  const readings = layout.built?.sides[side].readings ?? [];
  const pose = placeSide(project.speaker, layout, side);
  if (!pose.ok) return pose;
  const cabinet = cabinetOf(project.speaker, pose.value);
  const planned = plannedStanding(pose.value);
  const head = headOf(layout.listener, layout.desk);
  const around = { head, pad: layout.stand.pad };
  const fit = (some: readonly Reading[]): Fitted | null => fitStanding(some, cabinet, planned, around);
  const sorted = readings.length === 0 ? null : sortOut(readings, fit);
  if (!sorted) return success(null);
  const { fitted, odd, unclear } = sorted;
  const kept = readings.filter((_, place) => !odd.includes(place));
  const spread = spreadOf(fitted, cabinet, head);
  const known = isKnown(spread);
  const { standing } = fitted;
  const pass = passOf(cabinet, standing, head);
  return success({
    side,
    cabinet,
    planned,
    standing,
    spread,
    pass,
    known,
    residuals: residualsOf(readings, cabinet, standing, around),
    odd,
    unclear,
    levelTaken: fitted.levelTaken,
    next: nextReading(kept, fitted, cabinet, around, head, fit),
    leave: known && within(spread.pass, pass),
    byTurning: known ? mendByTurning(cabinet, standing, head) : null,
    byMoving: known ? mendByMoving(cabinet, standing, head) : null,
  });
}

/** Whether the head lies in the ellipse round the pass. */
function within({ major, minor, turn }: Ellipse, { right, over }: Pass): boolean {
  const [cos, sin] = [Math.cos(turn), Math.sin(turn)];
  return ((right * cos + over * sin) / major) ** 2 + ((over * cos - right * sin) / minor) ** 2 <= 1;
}
