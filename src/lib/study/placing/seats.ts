import type { Point } from '$lib/geometry/point.ts';
import { sideNames, type Layout, type SideName } from '$lib/project/project.ts';
import { withEdits } from '$lib/study/input.ts';
import type { Allowed } from './hit.ts';
import { sideOf, type SideTask } from './side.ts';
import { spansWhere, type Span } from './span.ts';

/** The number of the seat that is moved. */
export type SeatPointer = '/listener/setback' | '/listener/earHeight';

/**
 * The stretches of a number of the seat in which both stands hit where they are, the toe set anew by its rule. Looked at
 * millimetre by millimetre wherever one may begin or end: shorter ones may be passed over, the ends are exact.
 */
export function seatsOf(task: SideTask, pointer: SeatPointer, span: Span, allowed: Allowed): Span[] {
  const room = (value: number) => seatRoom(task, withEdits(task.layout, [{ pointer, value }]), allowed);
  return spansWhere(room, worthLooking(room, span, allowed === 'safe-zone' ? ZONE_FASTEST : FASTEST));
}

/** Nobody sets a chair finer, mm. */
const FINEST = 1;
/** By how much room and miss change per millimetre at the most: no loudspeaker turns faster; and the share of the safe zone. */
const FASTEST = 3;
const ZONE_FASTEST = 0.1;

/** The ends of a span, and in it steps as fine as there is something to see. */
function worthLooking(room: (x: number) => number, { from, to }: Span, fastest: number): number[] {
  const places = [from];
  const halve = (start: number, end: number): void => {
    const middle = (start + end) / 2;
    if (end - start > FINEST && Math.abs(room(middle)) < (fastest * (end - start)) / 2) {
      halve(start, middle);
      halve(middle, end);
    } else places.push(middle, end);
  };
  halve(from, to);
  return places;
}

/** 0 or more where both stand and hit with the layout's marks and seat. */
function seatRoom(task: SideTask, layout: Layout, allowed: Allowed): number {
  return Math.min(
    ...sideNames.map((name) => {
      const { chart, aim, ear, space } = sideOf({ ...task, layout }, name, allowed);
      const mark = markSeen(layout, name);
      const turned = chart.turned(mark);
      if (turned === null) return -1;
      const hits = Math.min(aim.left(turned.run, ear), turned.facing);
      return hits < 0 ? hits : Math.min(hits, space(mark, turned.toe));
    }),
  );
}

/** A mark of the layout, seen as a right one. */
export const markSeen = ({ placement }: Layout, side: SideName): Point => {
  const { x, y } = placement[side];
  return [side === 'left' ? 0 - x : x, y];
};
