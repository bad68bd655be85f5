import type { Point } from '$lib/geometry/point.ts';
import type { AngleDimension, Dimension } from './view.ts';

/** A linear dimension from its parts. */
export const linear = (dimension: Omit<Dimension, 'kind'>): Dimension => ({ kind: 'dimension', ...dimension });

const TURN = 2 * Math.PI;
const angleOf = ([x, y]: Point): number => Math.atan2(y, x);

/**
 * An angle dimension between two directions of the view, whichever way round: the arc takes the shorter way. `reference`
 * is drawn as a leg; `line` is a line of the drawing already.
 */
export function angular(
  dimension: Omit<AngleDimension, 'kind' | 'from' | 'to' | 'legs' | 'beyond'> & {
    readonly reference: Point;
    readonly line: Point;
    readonly draw: 'reference' | 'both' | 'none';
    readonly textBeyond?: 'reference' | 'line';
  },
): AngleDimension {
  const { reference, line, draw, textBeyond, ...rest } = dimension;
  const [a, b] = [angleOf(reference), angleOf(line)];
  const sweep = (((b - a) % TURN) + TURN) % TURN;
  const forwards = sweep <= Math.PI;
  const legs = draw === 'reference' ? (forwards ? 'from' : 'to') : draw;
  const beyond = textBeyond && {
    beyond: (textBeyond === 'reference') === forwards ? ('from' as const) : ('to' as const),
  };
  return forwards
    ? { kind: 'angle', ...rest, from: a, to: a + sweep, legs, ...beyond }
    : { kind: 'angle', ...rest, from: b, to: b + TURN - sweep, legs, ...beyond };
}
