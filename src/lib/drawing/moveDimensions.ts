import type { Plan } from '$lib/solution/document.ts';
import type { SideName } from '$lib/project/project.ts';
import type { Point } from '$lib/geometry/point.ts';
import { cornerOf } from './cabinetFrame.ts';
import { linear } from './makeDimension.ts';
import { fromAbove } from './projection.ts';
import type { Dimension } from './view.ts';

/** No drawing of a desk shows less, mm. */
const LEAST = 0.5;

/** From the middle of a head to behind it, mm. */
const HALF_LENGTH = 97;

/** Something that stands elsewhere in another layout, as it is seen from above. */
interface Move {
  readonly id: string;
  readonly name: string;
  readonly from: Point;
  readonly to: Point;
  /** Where the rows stand: sideways moves in front of it, moves along the desk's depth beside it. mm. */
  readonly front: number;
  readonly beside: { readonly at: number; readonly row: 1 | -1 };
  readonly each: boolean;
}

/**
 * How far the marks, the head and the screens of a plan stand from where they stand in another one, sideways and along the
 * desk's depth, mm: a dimension for each that is to be seen. A pair that moves as mirror images is given once, on the right.
 */
export const moveDimensions = (plan: Plan, before: Plan): Dimension[] =>
  [...marks(plan, before), head(plan, before), ...screens(plan, before)].flatMap(dimensionsOf);

function marks(plan: Plan, before: Plan): Move[] {
  const moves = { left: mark('left', plan, before), right: mark('right', plan, before) };
  const [dx, dy] = difference(moves.left);
  const [rightX, rightY] = difference(moves.right);
  const mirrored = Math.abs(dx + rightX) < LEAST && Math.abs(dy - rightY) < LEAST;
  return mirrored ? [{ ...moves.right, name: 'each mark', each: true }] : [moves.left, moves.right];
}

function mark(side: SideName, plan: Plan, before: Plan): Move {
  const corners = [plan, before].flatMap(({ sides }) =>
    Array.from({ length: 8 }, (_, index) => fromAbove.flat(cornerOf(sides[side], index))),
  );
  const xs = corners.map(([x]) => x);
  return {
    id: `move-mark-${side}`,
    name: `${side} mark`,
    from: fromAbove.flat(before.sides[side].mark),
    to: fromAbove.flat(plan.sides[side].mark),
    front: Math.min(...corners.map(([, y]) => y)),
    beside: side === 'right' ? { at: Math.max(...xs), row: 1 } : { at: Math.min(...xs), row: -1 },
    each: false,
  };
}

function head(plan: Plan, before: Plan): Move {
  const heads = [before, plan].map(({ head: { x, y } }): Point => [x, y]);
  const breadth = plan.layout.listener.headWidth;
  return {
    id: 'move-head',
    name: 'head',
    from: heads[0] ?? [0, 0],
    to: heads[1] ?? [0, 0],
    front: Math.min(...heads.map(([, y]) => y)) - HALF_LENGTH,
    beside: { at: Math.min(...heads.map(([x]) => x)) - breadth / 2, row: -1 },
    each: false,
  };
}

/** Those that both layouts have. */
const screens = (plan: Plan, before: Plan): Move[] =>
  plan.layout.monitors.flatMap((screen, index) => {
    const old = before.layout.monitors[index];
    if (old === undefined) return [];
    return [
      {
        id: `move-monitor-${index}`,
        name: plan.layout.monitors.length > 1 ? `screen ${index + 1}` : 'screen',
        from: [old.x, old.y] as const,
        to: [screen.x, screen.y] as const,
        front: Math.min(old.y, screen.y),
        beside: { at: Math.max(old.x + old.width / 2, screen.x + screen.width / 2), row: 1 as const },
        each: false,
      },
    ];
  });

const difference = ({ from, to }: Move): Point => [to[0] - from[0], to[1] - from[1]];

function dimensionsOf(move: Move): Dimension[] {
  const { id, name, from, to, front, beside, each } = move;
  const [dx, dy] = difference(move);
  const common = { subject: 'other', from, to, each } as const;
  const sideways = linear({
    ...common,
    id: `${id}-x`,
    run: 'across',
    row: -1,
    base: front,
    value: Math.abs(dx),
    name: `${name}, ${each ? (to[0] > from[0] ? 'outwards' : 'inwards') : dx > 0 ? 'to the right' : 'to the left'}`,
  });
  const along = linear({
    ...common,
    id: `${id}-y`,
    run: 'up',
    row: beside.row,
    base: beside.at,
    value: Math.abs(dy),
    name: `${name}, ${dy > 0 ? 'away from the listener' : 'towards the listener'}`,
  });
  return [...(Math.abs(dx) < LEAST ? [] : [sideways]), ...(Math.abs(dy) < LEAST ? [] : [along])];
}
