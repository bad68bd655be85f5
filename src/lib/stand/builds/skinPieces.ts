import { clipConvex, insetConvex } from '$lib/geometry/clipConvex.ts';
import { polygonPath } from '$lib/geometry/contour.ts';
import { momentsOf } from '$lib/geometry/moments.ts';
import { inner, minus, rightOf, shifted, unit } from '$lib/geometry/plane.ts';
import type { Point } from '$lib/geometry/point.ts';
import type { Board, Piece } from '$lib/stand/body.ts';
import type { BuildRequest } from '$lib/stand/buildRequest.ts';
import { coverOf, coverOfEdges } from '$lib/stand/cover.ts';
import type { StandSurface } from '$lib/stand/standSurface.ts';
import type { PointMass } from '$lib/stand/pointMasses.ts';

/**
 * The top skin, over the whole slope, and the front skin under it. Each is a rectangle as long as its section from the
 * side, whichever face of it is longer, so that ends which lean are planed down to them: of a low front only the inner
 * face may be left.
 *
 * @param surface Of a stand without a stop: its outline has four corners and is convex.
 * @param wood Width without veneer, mm.
 */
export function skinPieces({ settings }: BuildRequest, { outline, at }: StandSurface, board: Board, wood: number) {
  const cover = coverOf(settings);
  const bare = insetConvex(outline, coverOfEdges(outline, cover));
  const [, , topRear = ORIGIN, topFront = ORIGIN] = outline;
  const [baseFront = ORIGIN] = outline;
  const top = cutOff(bare, [topRear, topFront], cover.top + board.thickness);
  const front = cutOff(top.rest, [topFront, baseFront], cover.front + board.thickness);
  const pointMass = (section: readonly Point[]): PointMass => {
    const { area, centre } = momentsOf(polygonPath(section));
    return { volume: area * wood, density: board.density, at: at(0, ...centre) };
  };
  return {
    pieces: [
      pieceOf('top-skin', board, lengthAlong(top.strip, topRear, topFront), wood),
      pieceOf('front-skin', board, lengthAlong(front.strip, topFront, baseFront), wood),
    ],
    pointMasses: [pointMass(top.strip), pointMass(front.strip)],
  };
}

const ORIGIN: Point = [0, 0];

/** A convex polygon cut in two along an edge of the outline moved inwards: the strip along the edge, and the rest. */
function cutOff(polygon: readonly Point[], [from, to]: readonly [Point, Point], inwards: number) {
  const inside = rightOf(unit(minus(from, to)));
  const [start, end] = [shifted(from, inside, inwards), shifted(to, inside, inwards)];
  return { strip: clipConvex(polygon, end, start), rest: clipConvex(polygon, start, end) };
}

function lengthAlong(section: readonly Point[], from: Point, to: Point): number {
  const along = unit(minus(to, from));
  const places = section.map((point) => inner(minus(point, from), along));
  return Math.max(...places) - Math.min(...places);
}

const pieceOf = (name: string, board: Board, length: number, wide: number): Piece => ({
  name,
  stock: board.name,
  thickness: board.thickness,
  quantity: 1,
  outside: polygonPath([
    [0, 0],
    [length, 0],
    [length, wide],
    [0, wide],
  ]),
  inside: [],
  fromSide: false,
  lines: [],
});
