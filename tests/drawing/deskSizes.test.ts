import { expect, test } from 'vitest';
import { deskSizes, type DeskEdge } from '$lib/drawing/deskSizes.ts';
import { pointWithin } from '$lib/geometry/gapWithin.ts';
import { deskShape } from '$lib/project/deskShape.ts';
import type { DeskOutline } from '$lib/project/project.ts';
import { valueAt, withValue } from '$lib/document/pointer.ts';

const desks: readonly DeskOutline[] = [
  { rule: 'rectangle', width: 1400, depth: 700, corner: 0 },
  { rule: 'bowed', width: 1400, depth: 700, bow: 90 },
  { rule: 'bowed', width: 1400, depth: 700, bow: -60 },
  { rule: 'corner', left: 1700, right: 1500, leftDepth: 600, rightDepth: 700, front: 640 },
  { rule: 'l', width: 1700, depth: 700, return: { side: 'left', width: 600, length: 800 } },
  { rule: 'l', width: 1700, depth: 700, return: { side: 'right', width: 500, length: 400 } },
];

const middleOf = ({ body: [[x, y], [toX, toY]] }: DeskEdge) => [(x + toX) / 2, (y + toY) / 2] as const;

test.each(desks)(
  'the sizes of a desk, $rule, are those of its file, and an edge goes with the pointer that moves it',
  (outline) => {
    const sizes = deskSizes(outline);
    expect(sizes.length).toBeGreaterThanOrEqual(2);
    for (const { steps, value, range, edges } of sizes) {
      const at = `/${steps.join('/')}`;
      expect(valueAt(outline, at)).toBe(value);
      expect(value).toBeGreaterThanOrEqual(range.min);
      for (const edge of edges) {
        const [x, y] = middleOf(edge);
        // What is held lies on the desk's own edge.
        expect(Math.abs(pointWithin({ ...deskShape({ outline }), convex: false }, [x, y]).gap)).toBeLessThan(0.2);
        const moved = withValue(outline, at, value + 8 * edge.rate) as DeskOutline;
        const after = deskSizes(moved)
          .flatMap((one) => one.edges)
          .find(({ id }) => id === edge.id);
        const [toX, toY] = after ? middleOf(after) : [NaN, NaN];
        expect(edge.along === 'across' ? toX - x : toY - y, edge.id).toBeCloseTo(8, 9);
      }
    }
  },
);

test.each(desks)('the dimensions of a desk, $rule, are as long as they say', (outline) => {
  for (const { value, from, to, run, name } of deskSizes(outline)) {
    const [dx, dy] = [to[0] - from[0], to[1] - from[1]];
    const long = run === 'across' ? Math.abs(dx) : run === 'up' ? Math.abs(dy) : Math.hypot(dx, dy);
    expect(long, name).toBeCloseTo(Math.abs(value), 9);
  }
});
