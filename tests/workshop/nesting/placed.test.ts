import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { anyWedge, cornersOf, wedge } from '../shapes.ts';
import { circle, polygonPath } from '$lib/geometry/contour.ts';
import { placed, placedContour } from '$lib/workshop/nesting/placed.ts';
import { signedArea } from '$lib/geometry/area.ts';

const corners = polygonPath([
  [0, 0],
  [3, 0],
  [3, 1],
]);
const at = (turn: number) => cornersOf(placedContour(corners, { x: 10, y: 20, turn })).map(({ x, y }) => [x, y]);

describe('placed', () => {
  it('turns counter-clockwise about the origin, then moves, without dust at quarter turns', () => {
    expect(at(Math.PI / 2)).toEqual([
      [10, 20],
      [10, 23],
      [9, 23],
    ]);
    expect(at(Math.PI)).toEqual([
      [10, 20],
      [7, 20],
      [7, 19],
    ]);
    expect(at((-3 * Math.PI) / 2)).toEqual(at(Math.PI / 2));
    expect(at(-Math.PI / 2)).toEqual([
      [10, 20],
      [10, 17],
      [11, 17],
    ]);
  });

  it('takes holes and engraving along', () => {
    const part = { ...wedge(50, 5, 20, { inside: [circle([40, 5], 2)] }), engrave: [circle([10, 2], 1)] };
    const moved = placed(part, { x: 100, y: 100, turn: Math.PI });
    expect(moved.inside).toEqual([circle([60, 95], 2)]);
    expect(moved.engrave).toEqual([circle([90, 98], 1)]);
    expect(moved.name).toBe('slice');
  });

  it('keeps areas at any turn', () => {
    fc.assert(
      fc.property(anyWedge, fc.integer({ min: -360, max: 360 }), (part, degrees) => {
        const moved = placed({ ...part, engrave: [] }, { x: 7, y: -3, turn: (degrees * Math.PI) / 180 });
        expect(signedArea(moved.outside) / signedArea(part.outside)).toBeCloseTo(1, 10);
      }),
    );
  });
});
