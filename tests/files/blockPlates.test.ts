import { expect, test } from 'vitest';
import { blockPlates } from '$lib/files/toolFiles.ts';
import { extentOf } from '$lib/geometry/extent.ts';
import { solve } from '$lib/solution/solve.ts';
import { faultLine } from '$lib/project/fault.ts';
import { firstLayout, project } from '../projects.ts';

function platesOf(base: 'turned' | 'square-to-desk') {
  const of = project({ '/layouts/0/stand/build': 'solid', '/layouts/0/stand/base': base, '/layouts/0/stand/lift': 40 });
  const made = solve(of, firstLayout(of));
  if (!made.ok) throw new Error(made.faults.map(faultLine).join('; '));
  return blockPlates(made.value);
}

test('each template names its stand and its face: the blocks of a pair are mirror images', () => {
  expect(platesOf('square-to-desk').map(({ name }) => name)).toEqual(
    ['left', 'right'].flatMap((side) =>
      ['inboard side', 'outboard side', 'front', 'rear'].map((face) => `${side} stand, block, ${face}`),
    ),
  );
  expect(platesOf('turned').map(({ name }) => name)).toEqual(
    ['left', 'right'].flatMap((side) => ['inboard', 'outboard'].map((face) => `${side} stand, block, ${face} side`)),
  );
});

test('a mirrored pair has mirrored templates: the left inboard side is the right one turned over', () => {
  const [left, right] = ['left', 'right'].map((side) =>
    platesOf('square-to-desk').find(({ name }) => name === `${side} stand, block, inboard side`),
  );
  const corners = (plate = left, flip = false): string[] =>
    (plate?.layers.outside ?? [])
      .flatMap((contour) => (contour.kind === 'path' ? contour.vertices : []))
      .map(({ x, y }) => `${(flip ? (plate?.width ?? 0) - x : x).toFixed(6)} ${y.toFixed(6)}`)
      .sort();
  expect(corners(left)).toHaveLength(4);
  expect(corners(left)).toEqual(corners(right, true));
  expect(corners(left)).not.toEqual(corners(right));
});

test('letters stay inside the outline', () => {
  for (const plate of [...platesOf('turned'), ...platesOf('square-to-desk')]) {
    expect(plate.layers.engrave.length).toBeGreaterThan(10);
    const { left, right, bottom, top } = extentOf(...plate.layers.engrave);
    expect(Math.min(left, bottom)).toBeGreaterThan(0);
    expect(right).toBeLessThan(plate.width);
    expect(top).toBeLessThan(plate.height);
  }
});
