import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  contourOf,
  contourPrimitive,
  flipPrimitives,
  movePrimitives,
  primitivesBox,
  type Primitive,
} from '$lib/drawing/primitive.ts';
import { svgPath } from '$lib/drawing/svgPath.ts';
import type { Path, Vertex } from '$lib/geometry/contour.ts';
import { extentOf } from '$lib/geometry/extent.ts';
import { anyPath, straying } from '../files/contours.ts';

/** Bulge of an arc as SVG states it: centre and turn after SVG 1.1, appendix F.6.5, for circles. */
function bulgeOf([fx, fy]: readonly [number, number], [r, , , large, sweep, x, y]: readonly number[]): number {
  const [radius, tx, ty] = [r ?? NaN, x ?? NaN, y ?? NaN];
  const [hx, hy] = [(fx - tx) / 2, (fy - ty) / 2];
  const half = hx * hx + hy * hy;
  const factor = (large === sweep ? -1 : 1) * Math.sqrt(Math.max(0, (radius * radius - half) / half));
  const [cx, cy] = [factor * hy + (fx + tx) / 2, -factor * hx + (fy + ty) / 2];
  let turn = Math.atan2(ty - cy, tx - cx) - Math.atan2(fy - cy, fx - cx);
  if (sweep === 1 && turn < 0) turn += 2 * Math.PI;
  if (sweep === 0 && turn > 0) turn -= 2 * Math.PI;
  return Math.tan(turn / 4);
}

/** A path as its data say, y down as they are. */
function readPath(data: string): Path {
  const closed = data.endsWith('Z');
  const vertices: Vertex[] = [];
  for (const [, command = '', rest = ''] of data.matchAll(/([MLA])([^MLAZ]*)/g)) {
    const numbers = rest.trim().split(/[ ,]+/).map(Number);
    const [x = NaN, y = NaN] = numbers.slice(-2);
    const last = vertices.at(-1);
    if (command === 'A' && last) vertices[vertices.length - 1] = { ...last, bulge: bulgeOf([last.x, last.y], numbers) };
    vertices.push({ x, y, bulge: 0 });
  }
  const [first, last] = [vertices[0], vertices.at(-1)];
  // An arc that leads back to the start ends there before the path is closed.
  if (closed && first && last && first !== last && first.x === last.x && first.y === last.y) vertices.pop();
  return { kind: 'path', closed, vertices };
}

const line = (path: Path): Primitive & { kind: 'line' } => {
  const made = contourPrimitive(path, 0.5);
  if (made.kind !== 'line') throw new Error('a path is a line');
  return made;
};

describe('a bent line', () => {
  test('is the contour that it was made of', () => {
    fc.assert(
      fc.property(anyPath, (path) => {
        expect(contourOf(line(path))).toEqual(path);
      }),
    );
  });

  test('is written to path data that run where it runs', () => {
    fc.assert(
      fc.property(anyPath, (path) => {
        const read = readPath(svgPath(line(path), String));
        expect(read.closed).toBe(path.closed);
        // Near a half turn a radius tells the arc's height to half its digits only.
        expect(straying(path, read)).toBeLessThan(1e-3);
        expect(straying(read, path)).toBeLessThan(1e-3);
      }),
    );
  });

  test('has the box of its contour with the width of its line', () => {
    fc.assert(
      fc.property(anyPath, (path) => {
        const { left, bottom, right, top } = extentOf(path);
        const box = primitivesBox([line(path)]);
        [left - 0.25, bottom - 0.25, right + 0.25, top + 0.25].forEach((edge, i) =>
          expect(box[i]).toBeCloseTo(edge, 6),
        );
      }),
    );
  });

  test('turned over twice is itself; turned over it is a mirror image, and moved it is moved', () => {
    fc.assert(
      fc.property(anyPath, (path) => {
        const height = 297;
        const [once] = flipPrimitives([line(path)], height);
        const [twice] = flipPrimitives(once ? [once] : [], height);
        if (once?.kind !== 'line' || twice?.kind !== 'line') throw new Error('a line stays one');
        expect(straying(contourOf(twice), path)).toBeLessThan(1e-6);
        const mirrored: Path = {
          ...path,
          vertices: path.vertices.map(({ x, y, bulge }) => ({ x, y: height - y, bulge: -bulge })),
        };
        expect(straying(contourOf(once), mirrored)).toBeLessThan(1e-6);
        const [moved] = movePrimitives([line(path)], [3, -4]);
        const shifted: Path = {
          ...path,
          vertices: path.vertices.map(({ x, y, bulge }) => ({ x: x + 3, y: y - 4, bulge })),
        };
        if (moved?.kind !== 'line') throw new Error('a line stays one');
        expect(straying(contourOf(moved), shifted)).toBeLessThan(1e-6);
      }),
    );
  });
});

test('a text turned over keeps its base line and turns the other way', () => {
  const text = { kind: 'text', text: 'A1', at: [10, 20], turn: 30, anchor: 'middle', size: 3 } as const;
  expect(flipPrimitives([text], 100)).toEqual([{ ...text, at: [10, 80], turn: -30 }]);
});
