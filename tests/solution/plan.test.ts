import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { radians } from '$lib/geometry/angle.ts';
import type { Plan } from '$lib/solution/document.ts';
import { plan } from '$lib/solution/plan.ts';
import { faultLine } from '$lib/project/fault.ts';
import { anyDesk, firstLayout, project } from '../projects.ts';
import { runs } from '../runs.ts';

function planned(changes: Record<string, unknown> = {}): Plan {
  const of = project(changes);
  const result = plan(of, firstLayout(of));
  if (!result.ok) throw new Error(result.faults.map(faultLine).join('; '));
  return result.value;
}

function refused(changes: Record<string, unknown>): { kind: string; lines: string[] } {
  const of = project(changes);
  const result = plan(of, firstLayout(of));
  if (result.ok) throw new Error('expected no plan');
  return { kind: result.kind, lines: result.faults.map(faultLine) };
}

/** Every number in a value, with where it stands. */
function numbers(value: unknown, at = ''): [string, number][] {
  if (typeof value === 'number') return [[at, value]];
  if (typeof value !== 'object' || value === null) return [];
  return Object.entries(value).flatMap(([key, held]) => numbers(held, `${at}/${key}`));
}

describe('the demo', () => {
  const { sides, triangle, stand, parts, head, speedOfSound } = planned();

  test('has its head where the tape measure puts it', () => {
    expect(head).toEqual({ x: 0, y: -180, z: 445 });
    expect(speedOfSound).toBe(343.2);
  });

  test('aims at the head from both sides alike', () => {
    // The mark is 430 mm aside and 480 mm ahead of the head: atan(430/480).
    expect(sides.right.toe).toBeCloseTo((Math.atan2(430, 480) * 180) / Math.PI, 12);
    expect(sides.right.miss).toBeLessThan(1e-6);
    expect(sides.left.tilt).toBe(sides.right.tilt);
    expect(triangle.timeDifference).toBe(0);
    expect(triangle.angle).toBeCloseTo(2 * sides.right.toe, 9);
  });

  test('stands on a wedge whose top is the cabinet’s bottom', () => {
    const { tilt, frontEdgeHeight, lift } = sides.right;
    const run = 205 * Math.cos(radians(tilt));
    const expected = [
      [0, 0],
      [run, 0],
      [run, lift],
      [0, frontEdgeHeight],
    ];
    expect(stand.right.profile).toHaveLength(4);
    for (const [i, corner] of expected.entries()) {
      expect(stand.right.profile[i]?.[0]).toBeCloseTo(corner[0] ?? NaN, 9);
      expect(stand.right.profile[i]?.[1]).toBeCloseTo(corner[1] ?? NaN, 9);
    }
    // 165 / 3.05 = 54.1 layers.
    expect(stand.right.layers).toBe(54);
    expect(stand.right.width).toBeCloseTo(54 * 3.05, 12);
    expect(stand.right.leftOver).toBeCloseTo(165 - 54 * 3.05, 12);
  });

  test('needs one part, twice as many as one stand has layers', () => {
    expect(parts.map(({ name, quantity }) => [name, quantity])).toEqual([['slice', 108]]);
    expect(stand.left.part).toBe('slice');
  });
});

test('stands that differ are cut as two parts, told apart by name', () => {
  const { parts, stand } = planned({ '/layouts/0/placement/left': { x: -430, y: 250 } });
  expect(parts.map(({ name, quantity }) => [name, quantity])).toEqual([
    ['slice-left', 54],
    ['slice-right', 54],
  ]);
  expect(stand.right.part).toBe('slice-right');
});

describe('for any desk', () => {
  test('a plan has no number that is not finite, or there is a reason in words', () => {
    let plans = 0;
    fc.assert(
      fc.property(anyDesk, (changes) => {
        const of = project(changes);
        const result = plan(of, firstLayout(of));
        if (result.ok) {
          plans++;
          for (const [at, value] of numbers(result.value))
            if (!Number.isFinite(value)) throw new Error(`${at} is ${value}`);
        } else {
          for (const fault of result.faults) {
            expect(fault.pointer).toMatch(/^\/layouts\/0\//);
            expect(faultLine(fault)).not.toMatch(/NaN|Infinity|undefined/);
          }
        }
      }),
      { numRuns: runs(500) },
    );
    expect(plans).toBeGreaterThan(runs(500) * 0.4);
  });

  test('a mirrored room has a mirrored plan', () => {
    fc.assert(
      fc.property(anyDesk, (changes) => {
        const mirrored = {
          ...changes,
          '/speaker/mirrored': true,
          '/layouts/0/listener/offset': -Number(changes['/layouts/0/listener/offset']),
          '/layouts/0/placement/right/x': -Number(changes['/layouts/0/placement/left/x']),
          '/layouts/0/placement/right/y': changes['/layouts/0/placement/left/y'],
          '/layouts/0/placement/left/x': -Number(changes['/layouts/0/placement/right/x']),
          '/layouts/0/placement/left/y': changes['/layouts/0/placement/right/y'],
        };
        const [here, there] = [project({ ...changes, '/speaker/mirrored': true }), project(mirrored)];
        const [a, b] = [plan(here, firstLayout(here)), plan(there, firstLayout(there))];
        expect(a.ok).toBe(b.ok);
        fc.pre(a.ok && b.ok);
        expect(b.value.sides.left.toe).toBe(a.value.sides.right.toe);
        expect(b.value.sides.left.tilt).toBe(a.value.sides.right.tilt);
        expect(b.value.sides.left.crossovers).toEqual(a.value.sides.right.crossovers);
        expect(b.value.stand.left.profile).toEqual(a.value.stand.right.profile);
        expect(b.value.triangle.timeDifference).toBeCloseTo(-a.value.triangle.timeDifference, 9);
        expect(b.value.triangle.angle).toBeCloseTo(a.value.triangle.angle, 9);
        expect(b.value.checks.length).toBe(a.value.checks.length);
      }),
    );
  });

  test('the footprint carries the cabinet: its middle line runs from under the mark, rearwards by the toe', () => {
    fc.assert(
      fc.property(anyDesk, (changes) => {
        const of = project(changes);
        const result = plan(of, firstLayout(of));
        fc.pre(result.ok);
        const { right } = result.value.stand;
        const [a, b, c, d] = right.footprint;
        if (!a || !b || !c || !d) throw new Error('a footprint has four corners');
        const { mark, toe } = result.value.sides.right;
        expect((a[0] + d[0]) / 2).toBeCloseTo(mark.x, 6);
        expect((a[1] + d[1]) / 2).toBeCloseTo(mark.y, 6);
        expect(Math.atan2(b[0] - a[0], b[1] - a[1])).toBeCloseTo(radians(toe), 9);
      }),
    );
  });
});

describe('no plan', () => {
  test('a head in a cabinet makes the project unsound', () => {
    expect(
      refused({
        '/layouts/0/listener': { setback: -320, earHeight: 900, offset: 430 },
        '/layouts/0/aim/toe': { rule: 'straight' },
        '/layouts/0/aim/tilt': { rule: 'as-set', degrees: 0 },
      }),
    ).toEqual({
      kind: 'unsound',
      lines: [
        '/layouts/0/listener: expected a head outside the cabinets, got one that reaches into the right cabinet: move the seat or the right mark',
      ],
    });
  });

  test('cabinets in each other make the project unsound, by how much', () => {
    const straight = {
      '/layouts/0/aim/toe': { rule: 'straight' },
      '/layouts/0/placement/left': { x: -70, y: 300 },
      '/layouts/0/placement/right': { x: 70, y: 300 },
      '/layouts/0/monitors': [],
    };
    expect(refused(straight).lines).toEqual([
      '/layouts/0/placement: expected two cabinets clear of each other, got 25 mm of overlap: move the marks apart',
    ]);
    const touching = {
      '/layouts/0/placement/left': { x: -82.5, y: 300 },
      '/layouts/0/placement/right': { x: 82.5, y: 300 },
    };
    expect(planned({ ...straight, ...touching }).triangle.base).toBeCloseTo(165, 9);
  });

  test('a thin end under its minimum makes the project unsound', () => {
    const { kind, lines } = refused({ '/layouts/0/stand/lift': 2, '/layouts/0/stand/rods': null });
    expect(kind).toBe('unsound');
    expect(lines).toHaveLength(1);
    expect(lines[0]).toMatch(/^\/layouts\/0\/stand\/lift: expected a thin end of at least 3 mm/);
  });

  test('an axis that cannot reach the ear, and a rod that cannot fit, have no answer', () => {
    const far = refused({ '/layouts/0/listener/earHeight': 2400, '/layouts/0/listener/setback': -100 });
    expect(far.kind).toBe('no-answer');
    expect(far.lines[0]).toMatch(/^\/layouts\/0\/aim\/tilt: expected a tilt of at most 60°/);
    const rod = refused({ '/layouts/0/stand/rods': { diameter: 40 } });
    expect(rod.kind).toBe('no-answer');
    expect(rod.lines[0]).toMatch(/^\/layouts\/0\/stand\/rods/);
  });
});
