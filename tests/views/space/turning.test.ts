import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { looks } from '$lib/drawing/space/look.ts';
import { rgbOf } from '$lib/views/space/spaceColours.svelte.ts';
import { STEP, turnedByKey } from '$lib/views/space/turning.ts';
import { runs } from '../../runs.ts';

const { look } = looks.corner;

describe('keys', () => {
  test('move the eye the way they point, further with Shift', () => {
    expect(turnedByKey(look, 'ArrowRight', false)).toEqual({ ...look, round: look.round + 5 });
    expect(turnedByKey(look, 'ArrowLeft', true)).toEqual({ ...look, round: look.round - 15 });
    expect(turnedByKey(look, 'ArrowUp', false)).toEqual({ ...look, over: look.over + 5 });
    expect(turnedByKey(look, 'ArrowDown', false)).toEqual({ ...look, over: look.over - 5 });
  });

  test('come nearer and go farther', () => {
    expect(turnedByKey(look, '+', false)?.near).toBeCloseTo(STEP, 12);
    expect(turnedByKey(look, '-', false)?.near).toBeCloseTo(1 / STEP, 12);
  });

  test('leave to the page what turns nothing', () => {
    for (const key of ['Tab', 'Enter', 'a', 'Escape', 'PageDown'])
      expect(turnedByKey(look, key, false)).toBeUndefined();
  });
});

describe('a computed colour', () => {
  test('is read as numbers, however the browser writes it', () => {
    expect(rgbOf('rgb(12, 34, 56)')).toEqual([12, 34, 56]);
    expect(rgbOf('rgba(1, 2, 3, 0.5)')).toEqual([1, 2, 3]);
    expect(rgbOf('color(srgb 0 0.5 1)')).toEqual([0, 127.5, 255]);
    expect(rgbOf('color(srgb 1e-7 0 1)')[0]).toBeCloseTo(0, 3);
    const byte = fc.integer({ min: 0, max: 255 });
    fc.assert(
      fc.property(byte, byte, byte, (r, g, b) => {
        expect(rgbOf(`rgb(${r}, ${g}, ${b})`)).toEqual([r, g, b]);
      }),
      { numRuns: runs(100) },
    );
  });
});
