import { radians } from '$lib/geometry/angle.ts';
import type { Point } from '$lib/geometry/point.ts';
import type { DimensionStyle } from '$lib/drawing/dimensionStyle.ts';
import { textRoom } from '$lib/drawing/drawDimension.ts';
import type { DrawnText } from '$lib/drawing/drawnDimension.ts';

/** Figures and capitals, as a share of the text size: what of a text must stay clear. */
const CAPITAL = 0.72;

/** A text, or a line, on the paper. */
export interface Text {
  readonly id: string;
  /** Its four corners on the paper, in order; both ends of a line. */
  readonly corners: readonly Point[];
}

export function boxed(id: string, text: DrawnText, style: DimensionStyle): Text {
  const { middle, width } = textRoom(text, style);
  const [half, up] = [width / 2, (CAPITAL * style.textSize) / 2];
  const [cos, sin] = [Math.cos(radians(text.turn)), Math.sin(radians(text.turn))];
  const corner = (x: number, y: number): Point => [middle[0] + x * cos - y * sin, middle[1] + x * sin + y * cos];
  return { id, corners: [corner(-half, -up), corner(half, -up), corner(half, up), corner(-half, up)] };
}

/** Two convex outlines are apart when a line along one of their edges parts them. */
export function meet(a: readonly Point[], b: readonly Point[]): boolean {
  const parted = [a, b].some((outline) =>
    outline.some(([x, y], index) => {
      const [nextX, nextY] = outline[(index + 1) % outline.length] ?? [x, y];
      const across: Point = [nextY - y, x - nextX];
      const along = (corners: readonly Point[]): number[] => corners.map(([u, v]) => u * across[0] + v * across[1]);
      const [one, other] = [along(a), along(b)];
      return Math.max(...one) <= Math.min(...other) || Math.max(...other) <= Math.min(...one);
    }),
  );
  return !parted;
}

/** Which of the texts stand on each other. */
export const meeting = (texts: readonly Text[]): string[] =>
  texts.flatMap((one, index) =>
    texts.slice(index + 1).flatMap((other) => (meet(one.corners, other.corners) ? [`${one.id} and ${other.id}`] : [])),
  );
