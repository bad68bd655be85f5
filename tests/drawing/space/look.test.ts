import fc from 'fast-check';
import { mat4, vec4 } from 'gl-matrix';
import { describe, expect, it } from 'vitest';
import {
  cameraOf,
  depthOf,
  FARTHEST,
  looks,
  lookText,
  matrixOf,
  nearer,
  NEAREST,
  project,
  turned,
  type Look,
} from '$lib/drawing/space/look.ts';
import { spaceScene } from '$lib/drawing/space/spaceScene.ts';
import { along, vec3 } from '$lib/geometry/point.ts';
import { numberFrom } from '../../numbers.ts';
import { runs } from '../../runs.ts';
import { scene } from '../scene.ts';

const look: fc.Arbitrary<Look> = fc.record({
  round: numberFrom(-179, 180),
  over: numberFrom(-20, 89),
  near: numberFrom(FARTHEST, NEAREST),
});
const space = spaceScene(scene().plan);

describe('a look', () => {
  it('projects as the general matrices of computer graphics do (gl-matrix: lookAt, perspective)', () => {
    fc.assert(
      fc.property(look, numberFrom(-900, 900), numberFrom(-300, 900), numberFrom(-200, 500), (from, x, y, z) => {
        const [width, height] = [800, 500];
        const camera = cameraOf(space, from, width, height);
        const { eye, focus } = camera;
        const { middle } = space;
        const view = mat4.lookAt(mat4.create(), [eye.x, eye.y, eye.z], [middle.x, middle.y, middle.z], [0, 0, 1]);
        const lens = mat4.perspective(mat4.create(), 2 * Math.atan(height / 2 / focus), width / height, 1, 1e5);
        const [cx = 0, cy = 0, , w = 1] = vec4.transformMat4(
          vec4.create(),
          [x, y, z, 1],
          mat4.multiply(mat4.create(), lens, view),
        );
        const [px, py] = project(camera, vec3(x, y, z));
        // The matrices hold single precision.
        expect(px).toBeCloseTo((width / 2) * (1 + cx / w), 0);
        expect(py).toBeCloseTo((height / 2) * (1 - cy / w), 0);
        expect(depthOf(camera, vec3(x, y, z))).toBeCloseTo(w, 0);
      }),
      { numRuns: runs(200) },
    );
  });

  it('gives the picture’s matrix the same places, and depths from the nearest drawn to the farthest', () => {
    fc.assert(
      fc.property(look, numberFrom(-900, 900), numberFrom(-300, 900), numberFrom(-200, 500), (from, x, y, z) => {
        const camera = cameraOf(space, from, 800, 500);
        const matrix = matrixOf(camera);
        const at = (point: readonly number[]): number[] =>
          [0, 1, 2, 3].map((row) =>
            [0, 1, 2, 3].reduce((sum, column) => sum + (matrix[4 * column + row] ?? NaN) * (point[column] ?? NaN), 0),
          );
        const [cx = NaN, cy = NaN, , w = NaN] = at([x, y, z, 1]);
        const [px, py] = project(camera, vec3(x, y, z));
        expect(400 * (1 + cx / w)).toBeCloseTo(px, 6);
        expect(250 * (1 - cy / w)).toBeCloseTo(py, 6);
        for (const [reach, ends] of [
          [camera.near, -1],
          [camera.far, 1],
        ] as const) {
          const { x: ex, y: ey, z: ez } = along(camera.eye, camera.forward, reach);
          const [, , depth = NaN, size = NaN] = at([ex, ey, ez, 1]);
          expect(depth / size).toBeCloseTo(ends, 6);
        }
      }),
      { numRuns: runs(100) },
    );
  });

  it('shows what the other views of the drawing show, the same way up', () => {
    const at = (name: keyof typeof looks, point: [number, number, number]) =>
      project(cameraOf(space, looks[name].look, 600, 600), vec3(...point));
    // Plan: x to the right, y up the page.
    expect(at('above', [300, 0, 0])[0]).toBeGreaterThan(at('above', [-300, 0, 0])[0]);
    expect(at('above', [0, 400, 0])[1]).toBeLessThan(at('above', [0, 0, 0])[1]);
    // Side view from the right: the listener at the left.
    expect(at('side', [0, -180, 0])[0]).toBeLessThan(at('side', [0, 500, 0])[0]);
    expect(at('side', [0, 0, 300])[1]).toBeLessThan(at('side', [0, 0, 0])[1]);
    // From the chair: x to the right, z up.
    expect(at('chair', [300, 300, 0])[0]).toBeGreaterThan(at('chair', [-300, 300, 0])[0]);
    expect(at('chair', [0, 300, 300])[1]).toBeLessThan(at('chair', [0, 300, 0])[1]);
  });

  it('has everything but the walls in its picture, whichever way it is turned', () => {
    fc.assert(
      fc.property(look, fc.constantFrom([600, 600], [900, 600], [390, 520]), (from, [width = 0, height = 0]) => {
        const camera = cameraOf(space, { ...from, near: 0.75 }, width, height);
        for (const { subject, corners } of space.faces) {
          if (subject === 'wall') continue;
          for (const corner of corners) {
            const [x, y] = project(camera, corner);
            expect(Math.min(x, width - x, y, height - y)).toBeGreaterThan(0);
          }
        }
      }),
      { numRuns: runs(40) },
    );
  });

  it('turns all the way round, and stops over and under the desk', () => {
    fc.assert(
      fc.property(look, numberFrom(-2000, 2000), numberFrom(-400, 400), (from, right, up) => {
        const to = turned(from, right, up);
        expect(to.round).toBeGreaterThan(-180);
        expect(to.round).toBeLessThanOrEqual(180);
        expect(Math.cos(((to.round - from.round - right) * Math.PI) / 180)).toBeCloseTo(1, 9);
        expect(to.over).toBeGreaterThanOrEqual(-20);
        expect(to.over).toBeLessThanOrEqual(90);
        const back = turned(to, -right, 0);
        expect(Math.cos(((back.round - from.round) * Math.PI) / 180)).toBeCloseTo(1, 9);
      }),
      { numRuns: runs(200) },
    );
  });

  it('comes nearer and goes farther within bounds', () => {
    expect(nearer(looks.chair.look, 2).near).toBe(2);
    expect(nearer(looks.chair.look, 1e9).near).toBe(NEAREST);
    expect(nearer(looks.chair.look, 1e-9).near).toBe(FARTHEST);
  });

  it('is told in words', () => {
    expect(lookText(looks.chair.look)).toBe('from the chair, 16° above');
    expect(lookText(looks.above.look)).toBe('from above');
    expect(lookText(looks.side.look)).toBe('from the right, 4° above');
    expect(lookText({ round: -90, over: 0, near: 1 })).toBe('from the left, level');
    expect(lookText({ round: 180, over: -12, near: 1 })).toBe('from the far side, 12° below');
    expect(lookText({ round: -179, over: 0, near: 1 })).toBe('from the far side, level');
    expect(lookText(looks.corner.look)).toBe('from the chair and the right, 28° above');
    fc.assert(
      fc.property(look, (from) => {
        expect(lookText(from)).toMatch(/^from .+/);
      }),
      { numRuns: runs(100) },
    );
  });
});
