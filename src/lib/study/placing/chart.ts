import { radians } from '$lib/geometry/angle.ts';
import type { Point } from '$lib/geometry/point.ts';
import { solveToe } from '$lib/layout/toe.ts';
import type { ToeRule } from '$lib/project/project.ts';

/** How a loudspeaker stands at a mark: its toe in radians, and the run from the mark to the target, mm. */
export interface Turned {
  readonly toe: number;
  readonly run: number;
  /** What tells marks of one run apart: the toe where the rule turns the loudspeaker to a point, else mm sideways. */
  readonly across: number;
  /** How far before the mark, straight towards the listener's side, the point lies that it is turned to, mm; Infinity without one. */
  readonly facing: number;
}

/**
 * Marks of one side told by run and a second number, and back: where the run is bounded, the marks are a rectangle of the
 * two. Seen as a right loudspeaker. Exact both ways.
 */
export interface Chart {
  /** Null where the toe rule has no answer. */
  readonly turned: (mark: Point) => Turned | null;
  /** The mark, and the toe there. */
  readonly mark: (run: number, across: number) => { readonly mark: Point; readonly toe: number };
  /** Whether `across` is the toe. */
  readonly turns: boolean;
  /** The nearest mark of that run, where it has a closed form. */
  readonly nearest: ((mark: Point, run: number) => Point) | null;
  /** No mark so near to this one, mm, has a longer run. */
  readonly longestRun: (mark: Point, radius: number) => number;
  /**
   * By how much, per millimetre of a move, the run changes at the most, or a point that is `reach` from the mark moves,
   * anywhere so near to a mark; Infinity where that has no bound.
   */
  readonly fastest: (mark: Point, radius: number, reach: number) => number;
}

interface Seen {
  readonly rule: ToeRule;
  /** Of the head, in plan, seen as a right loudspeaker. */
  readonly head: Point;
  /** Half the head width. */
  readonly earOffset: number;
  /** How far inboard of the baffle's middle the aimed point lies. */
  readonly inboard: number;
}

export const chartOf = (seen: Seen): Chart =>
  seen.rule.rule === 'straight' || seen.rule.rule === 'as-set' ? fixedChart(seen) : turningChart(seen);

/** Along and across the direction that all marks are turned to. */
function fixedChart({ rule, head }: Seen): Chart {
  const toe = rule.rule === 'as-set' ? radians(rule.degrees) : 0;
  const [sin, cos] = [Math.sin(toe), Math.cos(toe)];
  const turned = ([x, y]: Point): Turned => {
    const [right, back] = [x - head[0], y - head[1]];
    return { toe, run: right * sin + back * cos, across: right * cos - back * sin, facing: Infinity };
  };
  const mark = (run: number, across: number) => ({
    mark: [head[0] + run * sin + across * cos, head[1] + run * cos - across * sin] as const,
    toe,
  });
  return {
    turned,
    mark,
    turns: false,
    nearest: (from, run) => mark(run, turned(from).across).mark,
    longestRun: () => Infinity,
    fastest: () => 1,
  };
}

/** Round the point that every axis passes in plan. A loudspeaker faces the listener's side: its toe is within a quarter turn. */
function turningChart({ rule, head, earOffset, inboard }: Seen): Chart {
  const behind = rule.rule === 'behind-head' ? rule.distance : 0;
  const aside = rule.rule === 'to-ear' ? earOffset : 0;
  const point: Point = [head[0] + aside, head[1] - behind];
  const turned = (at: Point): Turned | null => {
    const toe = solveToe({ rule, head: { x: head[0] - at[0], y: head[1] - at[1] }, earOffset, inboard });
    if (!toe.ok) return null;
    const [right, back] = [at[0] - point[0], at[1] - point[1]];
    const whole = right * Math.sin(toe.value) + back * Math.cos(toe.value);
    const run = whole - behind * Math.cos(toe.value);
    return { toe: toe.value, run, across: toe.value, facing: whole * Math.cos(toe.value) };
  };
  const mark = (run: number, toe: number) => {
    const [sin, cos] = [Math.sin(toe), Math.cos(toe)];
    const whole = run + behind * cos;
    return { mark: [point[0] + whole * sin + inboard * cos, point[1] + whole * cos - inboard * sin] as const, toe };
  };
  // Round the point itself the run is the same all round: the nearest mark of another run lies straight towards it or away.
  const nearest = ([x, y]: Point, run: number): Point => {
    const [right, back] = [x - point[0], y - point[1]];
    const factor = Math.hypot(run, inboard) / Math.hypot(right, back);
    return [point[0] + right * factor, point[1] + back * factor];
  };
  const away = ([x, y]: Point): number => Math.hypot(x - point[0], y - point[1]);
  return {
    turned,
    mark,
    turns: true,
    nearest: behind === 0 ? nearest : null,
    longestRun: (at, radius) => away(at) + radius,
    // A move square to the axis turns it by one over the distance to the point, along the axis.
    fastest: (at, radius, reach) => {
      const least = Math.max(0, away(at) - radius);
      const whole = Math.sqrt(Math.max(0, least * least - inboard * inboard));
      return 1 + Math.max(reach, Math.abs(inboard) + behind) / whole;
    },
  };
}
