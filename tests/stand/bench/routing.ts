import { areaPathsD, EndType, inflatePathsD, JoinType, type PathsD } from 'clipper2-ts';
import { expect } from 'vitest';
import type { Piece } from '$lib/stand/body.ts';
import { ringOf } from './drawn.ts';

/** mm²: chords for arcs, at every corner of a part. A sharp corner holds (1 − π/4)·r² = 0.54 mm² for a bit of 1/8 in. */
const CHORDS_TAKE = 0.05;

/**
 * A bit's middle never comes nearer to the part than half its diameter: what that leaves is the part grown and shrunk
 * again. It is the part as drawn, or corners stay full and joints do not seat.
 */
export function expectRoutable({ name, outside, inside }: Piece, bit: number): void {
  const rings = [outside, ...inside].map((contour): PathsD[number] =>
    contour.kind === 'circle'
      ? Array.from({ length: 256 }, (_, i) => {
          const angle = (-2 * Math.PI * i) / 256;
          return { x: contour.centre[0] + contour.radius * Math.cos(angle), y: contour.centre[1] + contour.radius * Math.sin(angle) }; // prettier-ignore
        })
      : ringOf(contour).map(([x, y]) => ({ x, y })),
  );
  const drawn = areaPathsD(rings);
  const offset = (paths: PathsD, by: number) => inflatePathsD(paths, by, JoinType.Round, EndType.Polygon, 2, 5, 2e-3);
  const left = areaPathsD(offset(offset(rings, bit / 2), -bit / 2));
  expect([name, Math.abs(left - drawn) < CHORDS_TAKE, left - drawn]).toEqual([name, true, expect.any(Number)]);
}
