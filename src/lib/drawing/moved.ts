import type { Point } from '$lib/geometry/point.ts';
import { undust, type LengthUnit } from '$lib/project/units.ts';
import type { Grip, Handle } from './handle.ts';

/** How a move is held to round numbers. */
export interface Holding {
  /** What numbers are multiples of, mm; see `gridFor`. */
  readonly grid: number;
  /** Whether values worth keeping to draw the move towards them. */
  readonly aligns: boolean;
  /** How near such a value must come, mm along the axis. */
  readonly reach: number;
  /** Moves along the axis of the longer way only. */
  readonly oneAxis: boolean;
}

/** A number after a move. */
export interface MovedGrip {
  readonly axis: 'across' | 'up';
  readonly grip: Grip;
  /** As the project holds it. */
  readonly value: number;
  /** Whether it has come to a value worth keeping to. */
  readonly aligned: boolean;
}

/** A quarter of an inch where lengths are shown in inches; 5 mm else. */
const GRID = { mm: 5, in: 6.35 } as const;
/** Of a free move: no hand is finer, and the numbers stay short. mm. */
const FREE = 0.1;

export const gridFor = (unit: LengthUnit, free: boolean): number => (free ? FREE : GRID[unit]);

/** The numbers of a handle after it was moved in its view's plane, mm. An axis that nobody moved along keeps its number. */
export function moved({ across, up }: Handle, [dx, dy]: Point, how: Holding): MovedGrip[] {
  const single = how.oneAxis && across !== null && up !== null;
  const first = Math.abs(dx) >= Math.abs(dy);
  return [
    ...(across ? [onAxis('across', across, single && !first ? 0 : dx, how)] : []),
    ...(up ? [onAxis('up', up, single && first ? 0 : dy, how)] : []),
  ];
}

function onAxis(axis: MovedGrip['axis'], grip: Grip, by: number, { grid, aligns, reach }: Holding): MovedGrip {
  if (by === 0) return { axis, grip, value: grip.value, aligned: false };
  const raw = grip.value + grip.rate * by;
  const near = aligns ? nearest(grip.align, raw) : null;
  const isNear = near !== null && Math.abs(near - raw) <= reach * Math.abs(grip.rate);
  const value = within(grip, isNear ? near : undust(Math.round(raw / grid) * grid));
  return { axis, grip, value, aligned: isNear && value === near };
}

/** The number of a grip so many mm further in the direction of its axis. */
export const nudged = (grip: Grip, by: number): number => within(grip, undust(grip.value + Math.sign(grip.rate) * by));

/** Without a negative zero, which no file can hold. */
const within = ({ range }: Grip, value: number): number => Math.min(range.max, Math.max(range.min, value)) + 0;

const nearest = (values: readonly number[], to: number): number | null =>
  values.reduce<number | null>(
    (best, value) => (best === null || Math.abs(value - to) < Math.abs(best - to) ? value : best),
    null,
  );
