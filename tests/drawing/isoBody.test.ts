import { describe, expect, test } from 'vitest';
import { vec3 } from '$lib/geometry/point.ts';
import { isoBody } from '$lib/drawing/isoBody.ts';
import { isometric } from '$lib/drawing/isometric.ts';
import { solve } from '$lib/solution/solve.ts';
import { faultLine } from '$lib/project/fault.ts';
import { firstLayout, project } from '../projects.ts';

function drawn(changes: Readonly<Record<string, unknown>>) {
  const of = project({ '/layouts/0/stand/lift': 40, ...changes });
  const made = solve(of, firstLayout(of));
  if (!made.ok) throw new Error(made.faults.map(faultLine).join('; '));
  return { planned: made.value, view: isoBody(made.value, 'right') };
}

describe('a build in isometric', () => {
  test.each([
    ['stacked', 'turned'],
    ['stacked', 'square-to-desk'],
    ['skinned', 'turned'],
    ['skinned', 'square-to-desk'],
    ['ribbed', 'turned'],
    ['ribbed', 'square-to-desk'],
    ['solid', 'turned'],
    ['solid', 'square-to-desk'],
  ])('%s, %s: is finite, named once each, and as wide as its body', (build, base) => {
    const { planned, view } = drawn({ '/layouts/0/stand/build': build, '/layouts/0/stand/base': base });
    const ids = view.items.map(({ id }) => id);
    expect(new Set(ids).size).toBe(ids.length);
    expect(view.extent.every(Number.isFinite)).toBe(true);
    const { profile, width } = planned.stand.right;
    const us = profile.map(([u]) => u);
    const [left] = isometric.flat(vec3(-width / 2, Math.min(...us), 0));
    const [right] = isometric.flat(vec3(width / 2, Math.max(...us), 0));
    // Ribs stand in from the sides; every other body fills its width.
    const short = build === 'ribbed' ? planned.stand.right.width / 4 : 0;
    for (const off of [view.extent[0] - left, right - view.extent[2]]) {
      expect(off).toBeGreaterThan(-1e-6);
      expect(off).toBeLessThan(short + 1e-6);
    }
  });

  test('a skinned one has two joints, and its core is no wood', () => {
    const { view } = drawn({ '/layouts/0/stand/build': 'skinned' });
    const joints = new Set(view.items.filter(({ id }) => id.startsWith('joint')).map(({ id }) => id.split('-').at(-1)));
    expect(joints.size).toBeGreaterThanOrEqual(1);
    expect(view.items.some(({ subject }) => subject === 'driver')).toBe(true);
  });

  test('and so it is with its base square to the desk, where only front and top show it', () => {
    const square = { '/layouts/0/stand/build': 'skinned', '/layouts/0/stand/base': 'square-to-desk' };
    const { view } = drawn(square);
    const core = view.items.filter(({ subject }) => subject === 'driver').map(({ id }) => id);
    expect(core).toEqual(['core-front', 'core-top']);
    expect(view.items.filter(({ id }) => id.startsWith('joint-top'))).toHaveLength(2);
  });
});
