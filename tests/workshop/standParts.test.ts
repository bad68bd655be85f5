import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Point } from '$lib/geometry/point.ts';
import { solve } from '$lib/solution/solve.ts';
import { labelInside } from '$lib/workshop/lettering/label.ts';
import { LETTERING_ABOVE, LETTERING_BELOW, letteringWidth } from '$lib/workshop/lettering/lettering.ts';
import { engravingOf } from '$lib/workshop/lettering/engraving.ts';
import type { Part } from '$lib/workshop/part.ts';
import { labelsOf } from '$lib/workshop/lettering/pieceLabel.ts';
import { faultLine } from '$lib/project/fault.ts';
import { numberFrom } from '../numbers.ts';
import { runs } from '../runs.ts';
import { firstLayout, project } from '../projects.ts';
import { partOf, wedgeCorners } from './shapes.ts';
import { polygonPath } from '$lib/geometry/contour.ts';

function partsOf(changes: Record<string, unknown>): readonly Part[] {
  const of = project(changes);
  const planned = solve(of, firstLayout(of));
  if (!planned.ok) throw new Error(planned.faults.map(faultLine).join('; '));
  return planned.value.parts;
}

const corners = (part: Part): Point[] => part.outside.vertices.map(({ x, y }) => [x, y]);

describe('the slices of two stands', () => {
  test('lie with their lower left at the origin, the front at the left', () => {
    const [slice] = partsOf({});
    if (!slice) throw new Error('there is a slice');
    expect(Math.min(...corners(slice).map(([x]) => x))).toBe(0);
    expect(Math.min(...corners(slice).map(([, y]) => y))).toBe(0);
    // Tilted up, the front is the thick end.
    const heightAt = (end: number): number =>
      Math.max(
        ...corners(slice)
          .filter(([x]) => Math.abs(x - end) < 1e-9)
          .map(([, y]) => y),
      );
    const length = Math.max(...corners(slice).map(([x]) => x));
    expect(heightAt(0)).toBeGreaterThan(heightAt(length));
    expect(labelsOf(slice)[0]?.text).toMatch(/^← FRONT/);
  });

  test('have the area that the plan states, holes deducted', () => {
    const of = project();
    const planned = solve(of, firstLayout(of));
    if (!planned.ok) throw new Error('the demo has a plan');
    const [slice] = planned.value.parts;
    if (!slice) throw new Error('there is a slice');
    const points = corners(slice);
    const doubled = points.reduce((sum, [x, y], i) => {
      const [nx, ny] = points[(i + 1) % points.length] ?? [x, y];
      return sum + x * ny - nx * y;
    }, 0);
    const holes = slice.inside.reduce(
      (sum, hole) => sum + (hole.kind === 'circle' ? Math.PI * hole.radius ** 2 : NaN),
      0,
    );
    expect(doubled / 2 - holes).toBeCloseTo(planned.value.stand.right.sliceArea, 9);
  });

  test('are named apart and labelled apart when they differ', () => {
    const parts = partsOf({ '/layouts/0/placement/right/y': 260 });
    expect(parts.map((part) => [part.name, labelsOf(part)[0]?.text])).toEqual([
      ['slice-left', '← FRONT · SLICE-LEFT'],
      ['slice-right', '← FRONT · SLICE-RIGHT'],
    ]);
  });
});

describe('parts of other builds', () => {
  test('are told apart by number, and shared by stands that mirror each other', () => {
    const parts = partsOf({
      '/layouts/0/stand/base': 'square-to-desk',
      '/layouts/0/stand/lift': 30,
      '/layouts/0/stand/rods': null,
    });
    expect(parts).toHaveLength(54);
    expect(parts.every(({ quantity }) => quantity === 2)).toBe(true);
    expect(parts.map((part) => labelsOf(part)[0]?.text)).toContain('← FRONT · SLICE-07');
    expect(new Set(parts.map(({ name }) => name)).size).toBe(54);
  });

  test('carry their names in the web when windows take the room', () => {
    const [slice] = partsOf({ '/layouts/0/stand/lift': 25, '/layouts/0/stand/relief': { web: 8, corner: 3 } });
    if (!slice) throw new Error('there is a slice');
    const [label] = labelsOf(slice);
    expect(label?.text).toBe('← FRONT · SLICE');
    expect(slice.inside.filter(({ kind }) => kind === 'path').length).toBeGreaterThan(0);
    const lowest = Math.min(
      ...slice.inside.flatMap((hole) => (hole.kind === 'path' ? hole.vertices.map(({ y }) => y) : [])),
    );
    expect((label?.y ?? NaN) + LETTERING_ABOVE * (label?.height ?? NaN)).toBeLessThan(lowest);
    expect((label?.y ?? NaN) - LETTERING_BELOW * (label?.height ?? NaN)).toBeGreaterThan(0);
  });

  test('are ribs with their centre lines, at the lower left', () => {
    const parts = partsOf({ '/layouts/0/stand/build': 'ribbed', '/layouts/0/stand/lift': 25 });
    expect(parts.map(({ name, quantity }) => [name, quantity])).toEqual([
      ['rib', 4],
      ['cross-rib-1', 2],
      ['cross-rib-2', 2],
      ['cross-rib-3', 2],
    ]);
    expect(parts[0]?.mark).toHaveLength(3);
    for (const part of parts) {
      expect(Math.min(...corners(part).map(([x]) => x))).toBeCloseTo(0, 12);
      expect(Math.min(...corners(part).map(([, y]) => y))).toBeCloseTo(0, 12);
      expect(labelsOf(part)[0]?.text).toContain(part.name.toUpperCase());
    }
  });

  test('of two stands that differ go to their own sides', () => {
    const of = project({ '/layouts/0/placement/right/y': 260, '/layouts/0/stand/cheeks': { count: 1 } });
    const planned = solve(of, firstLayout(of));
    if (!planned.ok) throw new Error('there is a plan');
    const { stand, parts } = planned.value;
    expect(stand.left.pieces.map(({ part }) => part)).toEqual(['slice-left', 'cheek-left']);
    expect(stand.right.part).toBe('slice-right');
    for (const { name, quantity } of parts) {
      const taken = [...stand.left.pieces, ...stand.right.pieces].filter(({ part }) => part === name);
      expect(taken.reduce((sum, one) => sum + one.quantity, 0)).toBe(quantity);
    }
  });
});

describe('a label', () => {
  const texts = ['← FRONT · SLICE', '← SLICE', '←'];

  test('lies clear inside the wedge, whatever its size, or is not there', () => {
    let drawn = 0;
    fc.assert(
      fc.property(numberFrom(20, 300), numberFrom(3, 40), numberFrom(3, 80), (run, thin, thick) => {
        const wedge = wedgeCorners(run, thin, thick);
        const [label] = labelInside(wedge, { from: 0, to: run }, texts);
        if (!label) {
          // Then even a bare arrow of 1 mm has no room.
          expect(Math.min(thin, thick) < 6 || run < 10).toBe(true);
          return;
        }
        drawn++;
        const half = letteringWidth(label.text, label.height) / 2;
        const top = (x: number): number => thin + ((thick - thin) * x) / run;
        expect(label.x - half).toBeGreaterThan(1);
        expect(label.x + half).toBeLessThan(run - 1);
        expect(label.y - LETTERING_BELOW * label.height).toBeGreaterThan(1);
        expect(label.y + LETTERING_ABOVE * label.height).toBeLessThan(
          Math.min(top(label.x - half), top(label.x + half)) - 1,
        );
      }),
    );
    expect(drawn).toBeGreaterThan(runs(100) / 2);
  });

  test('becomes strokes on the engrave layer, inside the part', () => {
    const wedge = wedgeCorners(200, 12, 50);
    const part = partOf('slice', polygonPath(wedge), { labels: labelInside(wedge, { from: 0, to: 200 }, texts) });
    const points = engravingOf(part).flatMap((mark) => (mark.kind === 'path' ? mark.vertices : []));
    expect(points.length).toBeGreaterThan(20);
    for (const { x, y } of points) {
      expect(x > 0 && x < 200 && y > 0 && y < 12 + (38 * x) / 200).toBe(true);
    }
  });
});
