import type { Point } from '$lib/geometry/point.ts';
import { leastMove, type Box } from './leastMove.ts';
import type { Chart } from './chart.ts';
import { regionsOf, type Region } from './region.ts';
import { common, type Span } from './span.ts';
import { nearestOnEnds, type Side } from './side.ts';

/**
 * The mark in a box, seen as a right one, that will do for one loudspeaker, or for both of a mirrored pair, and is nearest
 * to another: exact where only the aim holds it back and the toe rule has a closed form, else within `NEAREST_TO`. Null
 * where none will do.
 */
export function nearestMark(sides: readonly Side[], from: Point, box: Box): Point | null {
  const at = (mark: Point): number => sides.reduce((least, { room }) => Math.min(least, room(mark)), Infinity);
  if (isIn(box, from) && at(from) >= 0) return from;
  if (sides.some(({ runs }) => runs.length === 0)) return null;
  for (const side of sides) {
    // The nearest of all that hit, whatever stands around: where it will do, nothing can be nearer.
    const [nearest] = nearestOnEnds(side, from).sort((a, b) => apartFrom(from, a) - apartFrom(from, b));
    if (nearest && isIn(box, nearest) && at(nearest) >= 0) return nearest;
  }
  return leastMove(from, box, {
    at,
    hopeless: (mark, radius) => sides.some(({ hopeless }) => hopeless(mark, radius)),
  });
}

const apartFrom = (from: Point, [x, y]: Point): number => Math.hypot(x - from[0], y - from[1]);

const isIn = ({ left, right, front, back }: Box, [x, y]: Point): boolean =>
  x >= left && x <= right && y >= front && y <= back;

/** All marks in a box that will do for one loudspeaker, seen as a right one. */
export function marksOf({ chart, runs, space }: Side, box: Box): Region[] {
  const { run: held, across } = reachOfBox(chart, box);
  return runs.flatMap((span) => {
    const run = common(span, held);
    if (run === null) return [];
    return regionsOf({
      run,
      across,
      room: (at, beside) => {
        const { mark, toe } = chart.mark(at, beside);
        const [x, y] = mark;
        const inBox = Math.min(x - box.left, box.right - x, y - box.front, box.back - y);
        return inBox < 0 ? inBox : Math.min(inBox, space(mark, toe));
      },
      mark: (at, beside) => chart.mark(at, beside).mark,
    });
  });
}

/** Points on each edge of a box that are looked at, and how much more than they span is taken, as part of it. */
const ON_EDGE = 16;
const MORE = 0.02;

/** Runs and turns of all marks in a box, rather more than that. */
function reachOfBox(chart: Chart, { left, right, front, back }: Box): { readonly run: Span; readonly across: Span } {
  const parts = Array.from({ length: ON_EDGE + 1 }, (_, i) => i / ON_EDGE);
  const rim = parts.flatMap((t): Point[] => {
    const [x, y] = [left + t * (right - left), front + t * (back - front)];
    return [
      [x, front],
      [x, back],
      [left, y],
      [right, y],
    ];
  });
  const turned = rim.flatMap((mark) => chart.turned(mark) ?? []);
  // Where the head is over the box, so may be the least run and any turn.
  const whole = turned.length < rim.length || turned.some(({ facing }) => facing <= 0);
  const runs = turned.map(({ run }) => run);
  const turns = turned.map(({ across }) => across);
  const [longest, extent] = [Math.max(...runs), Math.max(...turns) - Math.min(...turns)];
  const pad = MORE * extent;
  return {
    run: { from: whole ? 0 : Math.min(...runs) * (1 - MORE), to: longest * (1 + MORE) },
    across:
      whole && chart.turns
        ? { from: -Math.PI / 2, to: Math.PI / 2 }
        : { from: Math.min(...turns) - pad, to: Math.max(...turns) + pad },
  };
}
