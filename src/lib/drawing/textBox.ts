import { radians } from '$lib/geometry/angle.ts';
import type { Point } from '$lib/geometry/point.ts';
import type { DimensionStyle } from './dimensionStyle.ts';
import { textRoom } from './drawDimension.ts';
import type { DrawnText } from './drawnDimension.ts';

/** What a text takes up on the paper: a rectangle along its line, of the height of its capitals. Paper units. */
export interface TextBox {
  readonly middle: Point;
  /** Unit vector along the text. */
  readonly along: Point;
  /** Half of it along the text, and square to that. */
  readonly half: Point;
}

/** Height of capitals, as a share of the text size, and what is kept clear round a text. */
const CAPITAL = 0.72;
const CLEAR = 0.08;

export function textBox(text: DrawnText, style: DimensionStyle): TextBox {
  const { middle, width } = textRoom(text, style);
  const clear = CLEAR * style.textSize;
  const turn = radians(text.turn);
  return {
    middle,
    along: [Math.cos(turn), Math.sin(turn)],
    half: [width / 2 + clear, (CAPITAL * style.textSize) / 2 + clear],
  };
}

/** A point as the box sees it: from its middle, along its text and square to that. */
function within({ middle, along }: TextBox, [x, y]: Point): Point {
  const [dx, dy] = [x - middle[0], y - middle[1]];
  return [dx * along[0] + dy * along[1], dy * along[0] - dx * along[1]];
}

/**
 * Whether a straight line runs through the box. The part of it between both pairs of edges is what is left of 0 to 1. A line
 * that does not even come near is told by its ends alone: most of a drawing is far from any text.
 */
export function crosses(box: TextBox, [ax, ay]: Point, [bx, by]: Point): boolean {
  const [x, y] = box.middle;
  const [w, h] = box.half;
  const reach = w + h;
  if (ax < x ? bx < x - reach && ax < x - reach : bx > x + reach && ax > x + reach) return false;
  if (ay < y ? by < y - reach && ay < y - reach : by > y + reach && ay > y + reach) return false;
  const a = within(box, [ax, ay]);
  const b = within(box, [bx, by]);
  let [enters, leaves] = [0, 1];
  for (const axis of [0, 1] as const) {
    const [start, way, half] = [a[axis], b[axis] - a[axis], box.half[axis]];
    if (way === 0) {
      if (Math.abs(start) >= half) return false;
      continue;
    }
    const [one, other] = [(-half - start) / way, (half - start) / way];
    enters = Math.max(enters, Math.min(one, other));
    leaves = Math.min(leaves, Math.max(one, other));
  }
  return enters < leaves;
}

export function corners({ middle: [x, y], along: [cos, sin], half: [w, h] }: TextBox): Point[] {
  const corner = (u: number, v: number): Point => [x + u * cos - v * sin, y + u * sin + v * cos];
  return [corner(-w, -h), corner(w, -h), corner(w, h), corner(-w, h)];
}

/** Whether all corners of one lie beyond one edge of the other. */
const parts = (box: TextBox, other: TextBox): boolean => {
  const seen = corners(other).map((corner) => within(box, corner));
  return ([0, 1] as const).some(
    (axis) =>
      seen.every((point) => point[axis] >= box.half[axis]) || seen.every((point) => point[axis] <= -box.half[axis]),
  );
};

/** Whether two boxes overlap: rectangles do unless an edge of either parts them. */
export const overlap = (one: TextBox, other: TextBox): boolean => !parts(one, other) && !parts(other, one);
