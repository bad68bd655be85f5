import { expect } from 'vitest';
import { edgesOf } from '$lib/geometry/edge.ts';
import type { Path } from '$lib/geometry/contour.ts';
import type { Point } from '$lib/geometry/point.ts';
import type { Piece } from '$lib/stand/body.ts';
import type { Some } from '$lib/stand/step.ts';
import { areaOf, areaWithin, besideChords, clipped } from './drawn.ts';
import { extent, flush, laidPiece, SAME, type Laid } from './laid.ts';

/** A cross rib as it stands: how far back, and its outline across. */
export interface Cross {
  readonly at: number;
  readonly thickness: number;
  readonly ring: readonly Point[];
  /** mm². */
  readonly area: number;
}

export function pieceOf(pieces: readonly Piece[], name: string): Piece {
  const piece = pieces.find((one) => one.name === name);
  if (!piece) throw new Error(`no piece is called ${name}`);
  return piece;
}

/** Slots into an outline's top or its base: the middle and the height of their level floors. */
function slotsOf(outside: Path, by: Point, up: boolean): { middle: number; floor: number }[] {
  const { ring } = flush(outside);
  const found = edgesOf(outside).flatMap(({ kind, start, end }) => {
    // Counter-clockwise, a slot's floor runs as the side that it is cut into does.
    const runs = up ? end[0] < start[0] : end[0] > start[0];
    if (kind !== 'straight' || Math.abs(start[1] - end[1]) > 1e-9 || !runs) return [];
    const [middle, floor] = [(start[0] + end[0]) / 2 + by[0], start[1] + by[1]];
    // Wood stands on both sides of it.
    const beside = crossed(ring, floor + (up ? 0.3 : -0.3));
    const walled = beside.some((u) => u < middle) && beside.some((u) => u > middle);
    return walled ? [{ middle, floor }] : [];
  });
  return found.sort((a, b) => a.middle - b.middle);
}

/** Where a ring is crossed at a height. */
const crossed = (ring: readonly Point[], z: number): number[] =>
  ring.flatMap(([x, y], i) => {
    const [u, w] = ring[(i + 1) % ring.length] ?? [x, y];
    return y < z === w < z ? [] : [x + ((u - x) * (z - y)) / (w - y)];
  });

/** Cross ribs lowered into the profile ribs' slots until all stand on the board. */
export function interlocked(
  ribs: readonly Some[],
  crosses: readonly Some[],
  pieces: readonly Piece[],
): { readonly layers: readonly Laid[]; readonly crosses: readonly Cross[] } {
  const across = crosses.map(({ name }) => {
    const piece = pieceOf(pieces, name);
    const { ring, by } = flush(piece.outside);
    return { piece, ring, slots: slotsOf(piece.outside, by, false) };
  });
  const [first] = across;
  if (!first) throw new Error('there are cross ribs');
  const standing = ribs.flatMap(({ name, count }) => Array.from({ length: count }, () => pieceOf(pieces, name)));
  expect(first.slots).toHaveLength(standing.length);
  const stood = standing.map((piece, i) => ({
    layer: laidPiece(piece, (first.slots[i]?.middle ?? NaN) - piece.thickness / 2),
    slots: slotsOf(piece.outside, flush(piece.outside).by, true),
  }));
  expect(stood[0]?.slots).toHaveLength(across.length);
  const lowered = across.map(({ piece, ring }, i) => ({
    at: stood[0]?.slots[i]?.middle ?? NaN,
    thickness: piece.thickness,
    ring,
    area: Math.abs(areaOf(ring)) + besideChords(piece.outside),
  }));
  for (const { layer, slots } of stood) {
    for (const [j, cross] of lowered.entries()) {
      const own = slots[j];
      const opposite = across[j]?.slots.find(({ middle }) => middle > layer.from && middle < layer.to);
      if (!own || !opposite) throw new Error('a rib and a cross rib meet in two slots');
      // Both stand on the board, and the slots' floors touch.
      expect(own.floor).toBeCloseTo(opposite.floor, SAME);
      // Neither stands in the other's wood.
      const [u, half] = [cross.at, cross.thickness / 2];
      expect(areaWithin(layer.inboard, [u - half, own.floor], [u + half, 1e4])).toBeLessThan(1e-6);
      expect(areaWithin(cross.ring, [layer.from, -1], [layer.to, own.floor])).toBeLessThan(1e-6);
    }
  }
  return { layers: stood.map(({ layer }) => layer), crosses: lowered };
}

/** A line that wood lies on the left of. */
export type Line = readonly [Point, Point];

const clippedBy = (ring: readonly Point[], [[x, y], [u, z]]: Line): Point[] => {
  const [a, b] = [z - y, x - u];
  return clipped(ring, a, b, a * x + b * y);
};

function outwards([[x, y], [u, z]]: Line, by: number): Line {
  const [dx, dy] = [((z - y) * by) / Math.hypot(u - x, z - y), ((x - u) * by) / Math.hypot(u - x, z - y)];
  return [
    [x + dx, y + dy],
    [u + dx, z + dy],
  ];
}

/**
 * Skins glued on in the stated order, each trimmed to what is there: mm³ of them. Each reaches from end to end, with nothing
 * over but what is trimmed for a lean.
 *
 * @param ribs Base, rear, top and front line of the ribs.
 */
export function skinned(
  names: readonly string[],
  pieces: readonly Piece[],
  ribs: readonly [Line, Line, Line, Line],
  width: number,
) {
  const [base, rear] = ribs;
  let [, , top, front] = ribs;
  let volume = 0;
  const laidOn: { name: string; thickness: number }[] = [];
  for (const name of names) {
    const { outside, thickness, quantity } = pieceOf(pieces, name);
    expect(quantity).toBe(1);
    const on = name === 'top-skin' ? top : front;
    const inner: Line = [on[1], on[0]];
    const far = outwards(on, thickness);
    const ends = name === 'top-skin' ? [base, rear, front] : [base, top];
    const strip = [far, inner, ...ends].reduce(clippedBy, [[-1e4, -1e4], [1e4, -1e4], [1e4, 1e4], [-1e4, 1e4]] as Point[]); // prettier-ignore
    const [dx, dy] = [on[1][0] - on[0][0], on[1][1] - on[0][1]];
    const along = extent(
      strip.map(([x, y]): Point => [(x * dx + y * dy) / Math.hypot(dx, dy), 0]),
      0,
    );
    const { ring } = flush(outside);
    expect(extent(ring, 0)[1]).toBeCloseTo(along[1] - along[0], SAME);
    expect(extent(ring, 1)[1]).toBeCloseTo(width, SAME);
    volume += Math.abs(areaOf(strip)) * width;
    if (name === 'top-skin') top = far;
    else front = far;
    laidOn.push({ name, thickness });
  }
  return { volume, laidOn };
}
