import type { Box } from '$lib/drawing/box.ts';
import type { Point } from '$lib/geometry/point.ts';
import type { AngleDimension, Dimension, Label, Outline, Pen, Round, Spot, Subject } from '$lib/drawing/view.ts';

/**
 * A small drawing that explains something: the same lines, tints and dimension lines as the drawing of the desk, in
 * proportions that read well and not to scale. First axis to the right, second axis up, in units of its own.
 */
export interface Figure {
  /** What must be in the picture; dimension lines find room round it. */
  readonly extent: Box;
  /** Later ones lie on top. */
  readonly shapes: readonly Shape[];
  readonly dimensions: readonly WordedDimension[];
  /** What is to be seen, for those who do not see it. */
  readonly says: string;
}

export type Shape = Outline | Round | Spot | Label;

/** A dimension line and what stands on it: a word, or the number as the project has it. */
export interface WordedDimension {
  readonly line: Dimension | AngleDimension;
  readonly text: string;
}

interface Look {
  readonly pen?: Pen;
  readonly filled?: boolean;
  readonly hatched?: boolean;
}

/** A closed area; tinted unless told otherwise. */
export const area = (id: string, subject: Subject, points: readonly Point[], look: Look = {}): Outline => ({
  kind: 'outline',
  id,
  subject,
  pen: look.pen ?? 'wide',
  points,
  closed: true,
  filled: look.filled ?? true,
  ...(look.hatched ? { hatched: true } : {}),
});

export const rect = (id: string, subject: Subject, [left, bottom, right, top]: Box, look: Look = {}): Outline =>
  area(
    id,
    subject,
    [
      [left, bottom],
      [right, bottom],
      [right, top],
      [left, top],
    ],
    look,
  );

/** An open line. */
export const line = (id: string, subject: Subject, points: readonly Point[], pen: Pen = 'narrow'): Outline => ({
  kind: 'outline',
  id,
  subject,
  pen,
  points,
  closed: false,
  filled: false,
});

export const circle = (id: string, subject: Subject, centre: Point, radius: number, look: Look = {}): Round => ({
  kind: 'round',
  id,
  subject,
  pen: look.pen ?? 'wide',
  centre,
  radius,
  filled: look.filled ?? true,
});

/** A point that something starts from. */
export const dot = (id: string, at: Point, radius = 6): Round => circle(id, 'sight', at, radius, { pen: 'narrow' });

/** A point that something is measured to. */
export const cross = (id: string, [x, y]: Point, arm = 14): Outline =>
  line(
    id,
    'axis',
    [
      [x - arm, y],
      [x + arm, y],
      [x, y],
      [x, y + arm],
      [x, y - arm],
    ],
    'wide',
  );

/** A point of the same small size in every figure. */
export const spot = (id: string, subject: Subject, at: Point, mark: Spot['mark'] = 'dot'): Spot => ({
  kind: 'spot',
  id,
  subject,
  at,
  mark,
});

/** A small ring round a place. */
export const ring = (id: string, at: Point): Spot => spot(id, 'axis', at, 'ring');

export const label = (id: string, at: Point, text: string, anchor: Label['anchor'] = 'middle'): Label => ({
  kind: 'label',
  id,
  subject: 'desk',
  at,
  text,
  anchor,
});

/** Straight pieces in half a turn: enough for a smooth thumb-sized arc. */
const PIECES = 12;

/** A limb: all points within a radius of the line from one point to another. */
export function limb(id: string, subject: Subject, from: Point, to: Point, radius: number): Outline {
  const way = Math.atan2(to[1] - from[1], to[0] - from[0]);
  const half = (centre: Point, start: number): Point[] =>
    Array.from({ length: PIECES + 1 }, (_, index) => {
      const angle = start + (Math.PI * index) / PIECES;
      return [centre[0] + radius * Math.cos(angle), centre[1] + radius * Math.sin(angle)];
    });
  return area(id, subject, [...half(to, way - Math.PI / 2), ...half(from, way + Math.PI / 2)], { pen: 'narrow' });
}

/** A dimension line along one axis. */
export const across = (
  id: string,
  from: Point,
  to: Point,
  row: number,
  text: string,
  more: Pick<Dimension, 'base' | 'beside'> = {},
): WordedDimension => ({
  line: { kind: 'dimension', id, subject: 'desk', run: 'across', from, to, row, value: 0, name: id, ...more },
  text,
});

export const upright = (
  id: string,
  from: Point,
  to: Point,
  row: number,
  text: string,
  more: Pick<Dimension, 'base' | 'beside'> = {},
): WordedDimension => ({
  line: { kind: 'dimension', id, subject: 'desk', run: 'up', from, to, row, value: 0, name: id, ...more },
  text,
});

/** An angle at a corner, counter-clockwise from one direction to the other, radians. */
export const turned = (
  id: string,
  corner: Point,
  from: number,
  to: number,
  radius: number,
  text: string,
  legs: AngleDimension['legs'] = 'none',
): WordedDimension => ({
  line: { kind: 'angle', id, subject: 'desk', corner, from, to, radius, legs, value: 0, name: id },
  text,
});
