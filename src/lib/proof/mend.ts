import { rootBetween } from '$lib/geometry/root.ts';
import { along, type Vec3 } from '$lib/geometry/point.ts';
import { passOf, stood, type Cabinet, type Pass, type Standing } from './standing.ts';

/** One thing to do to a finished stand, and where the axis then passes when it is done after those before it. */
export type Act = { readonly then: Pass; readonly standing: Standing } & (
  | {
      readonly act: 'shim';
      /** The edge of the cabinet's bottom to raise: at its other one it stays on the stand. */
      readonly where: 'front' | 'rear';
      /** Thickness of the card, mm. */
      readonly by: number;
    }
  | {
      readonly act: 'turn';
      /** About the plumb line through the mark, positive towards the middle, radians. */
      readonly by: number;
      /** How far the stand's rear corner that is away from the middle then moves, mm. */
      readonly corner: number;
    }
  | {
      readonly act: 'move';
      /** The stand and all on it, without turning: right and away from the listener, mm. */
      readonly by: { readonly x: number; readonly y: number };
    }
);

/** The cabinet raised at one edge of its bottom by a card of this thickness, the other edge staying where it is. */
export function shimmed(cabinet: Cabinet, standing: Standing, where: 'front' | 'rear', by: number): Standing {
  const lift = Math.asin(by / cabinet.depth);
  if (where === 'rear') return { ...standing, tilt: standing.tilt - lift };
  const tilted = { ...standing, tilt: standing.tilt + lift };
  // The middle of the rear bottom edge stays; the front one follows from it.
  const rear = stood(cabinet, standing).onBottom(cabinet.depth, 0);
  const { x, y, z } = along(rear, stood(cabinet, tilted).rear, -cabinet.depth);
  return { ...tilted, x: cabinet.side === 'left' ? -x : x, y, front: z };
}

/** The stand turned about the plumb line through the mark. */
const turned = (standing: Standing, by: number): Standing => ({ ...standing, toe: standing.toe + by });

/** The stand moved as it is, desk frame. */
const moved = (side: Cabinet['side'], standing: Standing, x: number, y: number): Standing => ({
  ...standing,
  x: standing.x + (side === 'left' ? -x : x),
  y: standing.y + y,
});

/** The steepest change that a card makes: past this the wedge is to be made anew. Share of the cabinet's depth. */
const MOST_CARD = 0.25;
const MOST_TURN = Math.PI / 4;
const MOST_MOVE = 1000;
/** Card and turn each disturb the other's work a little; so many rounds leave no trace of it. */
const ROUNDS = 20;

/**
 * What brings the axis through the head: a card under one edge of the cabinet for the height, then the stand turned about the
 * plumb line under the cabinet's front. Null for what needs more than `MOST_CARD` or an eighth of a turn.
 */
export function mendByTurning(cabinet: Cabinet, standing: Standing, head: Vec3): readonly Act[] | null {
  return mend(cabinet, standing, head, MOST_TURN, turned, (by, at) => ({
    act: 'turn',
    by,
    corner: cornerWay(cabinet, at, by),
  }));
}

/** As `mendByTurning`, but the stand is moved as it is, square to the axis seen from above. */
export function mendByMoving(cabinet: Cabinet, standing: Standing, head: Vec3): readonly Act[] | null {
  const { forward } = stood(cabinet, standing);
  const run = Math.hypot(forward.x, forward.y);
  const aside = (by: number) => ({ x: (-by * forward.y) / run, y: (by * forward.x) / run });
  return mend(
    cabinet,
    standing,
    head,
    MOST_MOVE,
    (at, by) => moved(cabinet.side, at, aside(by).x, aside(by).y),
    (by) => ({ act: 'move', by: aside(by) }),
  );
}

type Sideways = { readonly act: 'turn'; readonly by: number; readonly corner: number } | Pick<Extract<Act, { act: 'move' }>, 'act' | 'by'>; // prettier-ignore

function mend(
  cabinet: Cabinet,
  standing: Standing,
  head: Vec3,
  most: number,
  go: (at: Standing, by: number) => Standing,
  describe: (by: number, at: Standing) => Sideways,
): readonly Act[] | null {
  // Raising the front raises the axis.
  const where = passOf(cabinet, standing, head).over < 0 ? 'front' : 'rear';
  const after = (card: number, aside: number): Standing => go(shimmed(cabinet, standing, where, card), aside);
  let [card, aside] = [0, 0];
  for (let round = 0; round < ROUNDS; round += 1) {
    const [cardNow, asideNow] = [card, aside];
    const over = (by: number): number => passOf(cabinet, after(by, asideNow), head).over;
    // Where the other edge would have to go under, the card has done enough: none is needed for the rest.
    const higher = over(0) === 0 ? 0 : rootBetween(over, 0, MOST_CARD * cabinet.depth);
    if (higher === null && round === 0) return null;
    card = higher ?? 0;
    const right = (by: number): number => passOf(cabinet, after(card, by), head).right;
    const there = rootBetween(right, -most, most);
    if (there === null) return null;
    aside = there;
    if (card === cardNow && aside === asideNow) break;
  }
  const lifted = shimmed(cabinet, standing, where, card);
  const last = go(lifted, aside);
  const seen = (at: Standing) => ({ standing: at, then: passOf(cabinet, at, head) });
  return [
    { act: 'shim', where, by: card, ...seen(lifted) },
    { ...describe(aside, lifted), ...seen(last) },
  ];
}

/** How far the rear corner away from the middle goes when the stand turns about the plumb line under its front. */
function cornerWay(cabinet: Cabinet, standing: Standing, by: number): number {
  const { front, onBottom } = stood(cabinet, standing);
  const corner = onBottom(cabinet.depth, -cabinet.width / 2);
  return 2 * Math.hypot(corner.x - front.x, corner.y - front.y) * Math.sin(Math.abs(by) / 2);
}
