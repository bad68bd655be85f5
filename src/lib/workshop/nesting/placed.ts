import { shifted } from '$lib/geometry/plane.ts';
import type { Circle, Contour, Path } from '$lib/geometry/contour.ts';
import type { Placement } from '$lib/workshop/part.ts';
import type { Point } from '$lib/geometry/point.ts';

/** Where a placement puts things: no name needed. */
export type Spot = Pick<Placement, 'x' | 'y' | 'turn'>;

interface Cuttable {
  readonly outside: Path;
  readonly inside: readonly (Path | Circle)[];
  readonly engrave: readonly Contour[];
}

/** What is cut of a part, in the sheet's frame. Everything else about it stays as it was. */
export const placed = <Thing extends Cuttable>(thing: Thing, spot: Spot): Thing => ({
  ...thing,
  outside: placedContour(thing.outside, spot),
  inside: thing.inside.map((hole) => placedContour(hole, spot)),
  engrave: thing.engrave.map((contour) => placedContour(contour, spot)),
});

/** A contour turned about the origin, then moved. */
export function placedContour<Kind extends Contour>(contour: Kind, spot: Spot): Kind;
export function placedContour(contour: Contour, spot: Spot): Contour {
  const place = mover(spot);
  if (contour.kind === 'circle') return { ...contour, centre: place(contour.centre) };
  const vertices = contour.vertices.map(({ x, y, bulge }) => {
    const [movedX, movedY] = place([x, y]);
    return { x: movedX, y: movedY, bulge };
  });
  return { ...contour, vertices };
}

/** The motion of a placement, as a function of points. */
function mover({ x, y, turn }: Spot): (point: Point) => Point {
  const [cos, sin] = rotation(turn);
  return (point) => shifted([cos * point[0] - sin * point[1], sin * point[0] + cos * point[1]], [x, y]);
}

/** Radians. A turn this near a quarter turn was meant as one: no machine sets a board to a millionth of a degree. */
const QUARTER_DUST = 1e-9;
const quarters: readonly Point[] = [
  [1, 0],
  [0, 1],
  [-1, 0],
  [0, -1],
];

/** Cosine and sine; exact for quarter turns, where the library functions leave dust. */
function rotation(turn: number): Point {
  const count = Math.round(turn / (Math.PI / 2));
  const exact = quarters[((count % 4) + 4) % 4];
  const isQuarter = Math.abs(turn - (count * Math.PI) / 2) < QUARTER_DUST;
  return isQuarter && exact !== undefined ? exact : [Math.cos(turn), Math.sin(turn)];
}
