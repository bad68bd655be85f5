import type { Point } from '$lib/geometry/point.ts';
import { reversed } from '$lib/geometry/reversed.ts';
import type { Part } from '$lib/workshop/part.ts';
import { cornersOf, type Corner } from './partCorners.ts';

/** One point to set out, mm from the furthest left and the lowest corner of the outline, drawn out. */
export interface SetOut {
  /** `1`, `2`… on the outline; `A` for a round hole; `B1`, `B2`… on any other. */
  readonly name: string;
  readonly at: Point;
  /** Of a round hole; null for a corner. */
  readonly diameter: number | null;
  /** Of a corner's rounding; 0 for none. */
  readonly radius: number;
}

const A = 'A'.charCodeAt(0);
const LETTERS = 26;

/** A, B … Z, AA, AB …: the name of a part's hole. */
export const letterOf = (i: number): string =>
  `${i < LETTERS ? '' : letterOf(Math.floor(i / LETTERS) - 1)}${String.fromCharCode(A + (i % LETTERS))}`;

/** Every corner of the outline and of each hole, counter-clockwise from the lowest left one, and the middles of round holes. */
export function setOut({ outside, inside }: Pick<Part, 'outside' | 'inside'>): readonly SetOut[] {
  const corners = cornersOf(outside);
  // A rounded corner drawn out may lie beyond the part itself.
  const left = Math.min(...corners.map(({ at: [x] }) => x));
  const bottom = Math.min(...corners.map(({ at: [, y] }) => y));
  const from = ([x, y]: Point): Point => [x - left, y - bottom];
  const corner = (name: string, { at, radius }: Corner): SetOut => ({
    name,
    at: from(at),
    diameter: null,
    radius,
  });
  return [
    ...corners.map((one, i) => corner(`${i + 1}`, one)),
    ...inside.flatMap((hole, i): readonly SetOut[] =>
      hole.kind === 'circle'
        ? [{ name: letterOf(i), at: from(hole.centre), diameter: 2 * hole.radius, radius: 0 }]
        : cornersOf(reversed(hole)).map((one, k) => corner(`${letterOf(i)}${k + 1}`, one)),
    ),
  ];
}
