import type { Point } from '$lib/geometry/point.ts';
import { stood, type Cabinet, type Standing } from '$lib/proof/standing.ts';
import type { Act } from '$lib/proof/mend.ts';

/** Outlines of a picture, mm, y up: as it is dashed, as it will be drawn through, what is laid in or where it turns. */
export interface ActPicture {
  readonly before: readonly Point[];
  readonly after: readonly Point[];
  /** The stand under the cabinet; empty from above, where the cabinet's bottom is its outline. */
  readonly stand: readonly Point[];
  /** The card’s thickness at the edge it lies under, or the way of the corner that is watched. */
  readonly mark: readonly Point[];
  /** The point that stays. */
  readonly pivot: Point;
  /** How many times as large as it is the change is drawn. */
  readonly times: number;
}

/** A card thinner than this, and a corner that goes less far, is drawn larger, mm: else nobody sees it. */
const SEEN = 14;

const timesFor = (size: number): number => Math.max(1, Math.min(20, Math.round(SEEN / Math.max(size, 1e-6))));

/** What a card or a turn does, large enough to be seen: a card from the side, front at the left; a turn or a move from above. */
export function actPicture(cabinet: Cabinet, before: Standing, act: Act): ActPicture {
  switch (act.act) {
    case 'shim':
      return cardPicture(cabinet, before, act.where, act.by);
    case 'turn': {
      const times = timesFor(act.corner);
      return fromAbove(cabinet, before, { ...before, toe: before.toe + times * act.by }, times);
    }
    case 'move': {
      const times = timesFor(Math.hypot(act.by.x, act.by.y));
      const x = cabinet.side === 'left' ? -act.by.x : act.by.x;
      return fromAbove(cabinet, before, { ...before, x: before.x + times * x, y: before.y + times * act.by.y }, times);
    }
  }
}

/** The bottom of a cabinet from above. */
function fromAbove(cabinet: Cabinet, before: Standing, after: Standing, times: number): ActPicture {
  const outline = (standing: Standing): readonly Point[] => {
    const { onBottom } = stood(cabinet, standing);
    const half = cabinet.width / 2;
    return ([[0, half], [cabinet.depth, half], [cabinet.depth, -half], [0, -half]] as const).map(([rear, inwards]): Point => {
      const { x, y } = onBottom(rear, inwards);
      return [x, y];
    });
  };
  const [was, is] = [outline(before), outline(after)];
  const { front } = stood(cabinet, after);
  return { before: was, after: is, stand: [], mark: [was[2], is[2]].filter((one) => one !== undefined), pivot: [front.x, front.y], times };
} // prettier-ignore

/** The side of a cabinet, its front at the left, on its wedge. */
function cardPicture(
  { depth, baffle, rake }: Cabinet,
  { tilt, front }: Standing,
  where: 'front' | 'rear',
  by: number,
): ActPicture {
  const times = timesFor(by);
  const lift = Math.asin(Math.min(0.5, (times * by) / depth)) * (where === 'rear' ? 1 : -1);
  const [near, far]: readonly [Point, Point] = [
    [0, front],
    [depth * Math.cos(tilt), front - depth * Math.sin(tilt)],
  ];
  const pivot = where === 'rear' ? near : far;
  const turned = ([x, y]: Point): Point => {
    const [dx, dy] = [x - pivot[0], y - pivot[1]];
    return [pivot[0] + dx * Math.cos(lift) - dy * Math.sin(lift), pivot[1] + dx * Math.sin(lift) + dy * Math.cos(lift)];
  };
  const up = (from: Point, length: number, lean: number): Point => [from[0] + length * Math.sin(tilt + lean), from[1] + length * Math.cos(tilt + lean)];
  // The rear is taken as square to the bottom: a picture, not a measure.
  const body = [near, far, up(far, baffle * Math.cos(rake), 0), up(near, baffle, rake)];
  const edge = where === 'rear' ? far : near;
  return {
    before: body,
    after: body.map(turned),
    stand: [[near[0], 0], [far[0], 0], far, near],
    mark: [edge, turned(edge)],
    pivot,
    times,
  };
} // prettier-ignore
