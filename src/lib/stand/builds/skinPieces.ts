import { polygonPath } from '$lib/geometry/contour.ts';
import { offsetEdges } from '$lib/geometry/offsetEdges.ts';
import type { Point } from '$lib/geometry/point.ts';
import type { Board, Piece } from '$lib/stand/body.ts';
import type { Commission } from '$lib/stand/commission.ts';
import { coverOf, coverOfEdges } from '$lib/stand/cover.ts';
import type { Lump } from '$lib/stand/lumps.ts';
import { profileOf } from '$lib/stand/profile.ts';
import { turnedPlace } from '$lib/stand/turnedGround.ts';

/**
 * The top skin, over the whole slope, and the front skin under it, as rectangles: as long as their outer faces, so that
 * ends which lean are planed down to them.
 *
 * @param wood Width without veneer, mm.
 */
export function skinPieces({ settings, speaker, stance }: Commission, board: Board, wood: number) {
  const profile = profileOf(settings, speaker.depth, stance.tilt, stance.lift);
  if (!profile.ok) throw new Error('a profile that holds under skins holds without them');
  const under = { top: board.thickness, front: 0 };
  const bare = profile.value.slice;
  const topless = offsetEdges(profile.value.outline, coverOfEdges(profile.value.outline, coverOf(settings, under)));
  if (!topless) throw new Error('wood was left under both skins');
  const top = lengthOf(bare[2], bare[3]);
  const front = lengthOf(topless.at(-1), topless[0]);
  const t = board.thickness;
  const middle = (a: Point = [0, 0], b: Point = [0, 0], inwards: number): Point => {
    const size = lengthOf(a, b);
    const [x, y] = [(b[0] - a[0]) / size, (b[1] - a[1]) / size];
    return [(a[0] + b[0]) / 2 - y * inwards, (a[1] + b[1]) / 2 + x * inwards];
  };
  const lump = (length: number, at: Point): Lump => ({
    volume: length * wood * t,
    density: board.density,
    at: turnedPlace(stance, 0, ...at),
  });
  return {
    pieces: [pieceOf('top-skin', board, top, wood), pieceOf('front-skin', board, front, wood)],
    lumps: [lump(top, middle(bare[2], bare[3], t / 2)), lump(front, middle(topless.at(-1), topless[0], t / 2))],
  };
}

const lengthOf = (a: Point = [0, 0], b: Point = [0, 0]): number => Math.hypot(b[0] - a[0], b[1] - a[1]);

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
