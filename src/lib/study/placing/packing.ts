import { rootBetween } from '$lib/geometry/root.ts';
import { radians } from '$lib/geometry/angle.ts';
import type { Speaker } from '$lib/project/project.ts';
import type { ExistingStand } from './ask.ts';
import { aimOf, type Allowed, type Stand } from './hit.ts';
import type { Side, SideTask } from './side.ts';
import { spansWhere, stepsOf, type Span } from './span.ts';

/** What put under a stand at its mark makes it hit, the seat being where it is. */
export interface Packing {
  /** A riser lies under the whole base, a shim under one edge of it, square to the toed direction. */
  readonly under: 'base' | 'front' | 'rear';
  /** Thickness that aims dead on, mm; a negative one of a riser is what the stand is too high by. */
  readonly thickness: number;
  /** Thicknesses that are within what is allowed, the exact one among them, mm. */
  readonly from: number;
  readonly to: number;
  /** What the stand then is. */
  readonly then: Stand;
}

/** Most that a shim may turn a stand, radians: past it a stand on two edges is no stand any more. */
const MOST_TURN = radians(8);
/** Most that a riser may add or a stand be too high by, mm: past it another stand is less trouble. */
const MOST_RISE = 400;
/** How closely the ends of what is allowed are looked for: radians and mm. */
const TURN_STEP = radians(0.02);
const RISE_STEP = 1;

/**
 * The riser and the shim that would do for one stand at a mark, each by itself; a shim only where the base is turned with
 * the loudspeaker, so that one of its edges lies square to the axis. The loudspeaker is put over its mark again afterwards.
 */
export function packingOf(task: SideTask, side: Side, run: number, allowed: Allowed): Packing[] {
  return [...riser(task, side, run, allowed), ...shim(task, side, run, allowed)];
}

function riser(task: SideTask, side: Side, run: number, allowed: Allowed): Packing[] {
  const { stand } = side;
  const thickness = side.ear - side.aim.height(run);
  const raised = (by: number): Stand => ({ tilt: stand.tilt, lift: stand.lift + by });
  if (Math.abs(thickness) > MOST_RISE || raised(thickness).lift < 0) return [];
  const span = around(thickness, { from: Math.max(-stand.lift, -MOST_RISE), to: MOST_RISE }, RISE_STEP, (by) =>
    leftWith(task, side, raised(by), run, allowed),
  );
  return [{ under: 'base', thickness, ...span, then: raised(thickness) }];
}

function shim(task: SideTask, side: Side, run: number, allowed: Allowed): Packing[] {
  const { stand } = side;
  const base = baseOf(stand, task.speaker);
  if (stand.toe !== null || base === null) return [];
  const turned = (by: number): Stand => shimmed(stand, task.speaker, base, by);
  const over = (by: number): number => heightWith(task, side, turned(by), run) - side.ear;
  const by = rootBetween(over, -MOST_TURN, MOST_TURN);
  if (by === null || by === 0 || turned(by).lift < 0) return [];
  const length = base.to - base.from;
  const ends = by > 0 ? { from: 0, to: MOST_TURN } : { from: -MOST_TURN, to: 0 };
  const { from, to } = around(by, ends, TURN_STEP, (turn) => leftWith(task, side, turned(turn), run, allowed));
  const thickness = (turn: number): number => length * Math.abs(Math.sin(turn));
  const [thin, thick] = [thickness(from), thickness(to)].sort((a, b) => a - b);
  return [
    {
      under: by > 0 ? 'front' : 'rear',
      thickness: thickness(by),
      from: thin ?? 0,
      to: thick ?? 0,
      then: turned(by),
    },
  ];
}

/** Front and rear edge of the base, mm behind the mark along the toed direction. */
function baseOf({ footprint, tilt }: ExistingStand, { depth }: Speaker): Span | null {
  if (!footprint) return { from: 0, to: depth * Math.cos(tilt) };
  const ends = footprint.map(([, y]) => y);
  const base = { from: Math.min(...ends), to: Math.max(...ends) };
  return base.to > base.from ? base : null;
}

/**
 * The stand turned about the edge of its base that stays down: a shim under the front edge lifts the front (turn over 0,
 * about the rear edge), one under the rear edge the rear (turn under 0, about the front edge).
 */
function shimmed({ tilt, lift }: Stand, { depth }: Speaker, base: Span, turn: number): Stand {
  const frontEdge = lift + Math.max(0, depth * Math.sin(tilt));
  const pivot = turn > 0 ? base.to : base.from;
  const raised = frontEdge * Math.cos(turn) + pivot * Math.sin(turn);
  return { tilt: tilt + turn, lift: raised - Math.max(0, depth * Math.sin(tilt + turn)) };
}

const aimWith = ({ speaker, layout, sums }: SideTask, { side }: Side, stand: Stand, allowed: Allowed) =>
  aimOf(speaker, layout, side, stand, allowed, sums?.[side] ?? null);

const heightWith = (task: SideTask, side: Side, stand: Stand, run: number): number =>
  aimWith(task, side, stand, { miss: 0 }).height(run);

const leftWith = (task: SideTask, side: Side, stand: Stand, run: number, allowed: Allowed): number =>
  aimWith(task, side, stand, allowed).left(run, side.ear);

/** The stretch round an exact answer that is allowed; the answer by itself where even it is not. */
function around(exact: number, ends: Span, step: number, left: (x: number) => number): Span {
  const places = [...stepsOf(ends, step), exact].sort((a, b) => a - b);
  const held = spansWhere(left, places).find(({ from, to }) => from <= exact && exact <= to);
  return held ?? { from: exact, to: exact };
}
