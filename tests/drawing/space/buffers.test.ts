import { describe, expect, it } from 'vitest';
import { screenStyle } from '$lib/drawing/dimensionStyle.ts';
import { faceBuffers, lineBuffers } from '$lib/drawing/space/buffers.ts';
import { areaVector } from '$lib/drawing/space/body.ts';
import { faceColour, lineColour, type Palette, type Rgb } from '$lib/drawing/space/colour.ts';
import { cameraOf, looks } from '$lib/drawing/space/look.ts';
import { isSeen } from '$lib/drawing/space/seen.ts';
import { spaceScene } from '$lib/drawing/space/spaceScene.ts';
import { cross, dot, length, subtract, vec3, type Vec3 } from '$lib/geometry/point.ts';
import type { Pen } from '$lib/drawing/view.ts';
import { plan } from '$lib/solution/plan.ts';
import { firstLayout, project } from '../../projects.ts';
import { scene } from '../scene.ts';

const both = (r: number, g: number): { readonly tint: Rgb; readonly edge: Rgb } => ({
  tint: [r, g, 0],
  edge: [g, r, 255],
});
const palette: Palette = {
  paper: [255, 255, 255],
  colours: {
    desk: both(10, 200),
    wall: both(20, 200),
    monitor: both(30, 200),
    cabinet: both(40, 200),
    driver: both(50, 200),
    stand: both(60, 200),
    head: both(70, 200),
    axis: both(80, 200),
    triangle: both(90, 200),
    sight: both(100, 200),
    reflection: both(110, 200),
    surface: both(115, 200),
    other: both(120, 200),
  },
  unshaded: false,
};
const places = (numbers: Float32Array): Vec3[] =>
  Array.from({ length: numbers.length / 3 }, (_, index) =>
    vec3(numbers[3 * index] ?? NaN, numbers[3 * index + 1] ?? NaN, numbers[3 * index + 2] ?? NaN),
  );
const WIDTHS: ReadonlyMap<Pen, number> = new Map([
  ['wide', 2],
  ['narrow', 1],
  ['aim', 1.4],
  ['hidden', 1],
]);
/** Single precision, of lengths of metres, mm. */
const SINGLE = 1e-3;

/** A desk with a hollow: its top is no convex face. */
const hollow = () => {
  const made = project({
    '/layouts/0/desk/outline': {
      rule: 'l',
      width: 2000,
      depth: 700,
      return: { side: 'right', width: 600, length: 500 },
    },
  });
  const planned = plan(made, firstLayout(made));
  if (!planned.ok) throw new Error('an L-shaped desk holds the demo’s loudspeakers');
  return planned.value;
};

describe('what a graphics processor is given', () => {
  it('covers every face, each triangle turned as its face is, hollows left out', () => {
    for (const made of [scene().plan, hollow()]) {
      const { faces } = spaceScene(made);
      for (const face of faces) {
        const { position, colour } = faceBuffers([face], palette);
        const corners = places(position);
        let area = 0;
        for (let at = 0; at < corners.length; at += 3) {
          const [a, b, c] = corners.slice(at, at + 3);
          if (!a || !b || !c) throw new Error('a triangle has three corners');
          const twice = dot(cross(subtract(b, a), subtract(c, a)), face.normal);
          expect(twice).toBeGreaterThan(-1);
          area += twice;
        }
        const whole = length(areaVector(face.corners));
        expect(Math.abs(area - whole)).toBeLessThan(1e-4 * whole + 1);
        const [red = NaN, green = NaN] = faceColour(face, palette);
        expect(colour[0]).toBeCloseTo(red / 255, 6);
        expect(colour[1]).toBeCloseTo(green / 255, 6);
        expect(colour).toHaveLength(position.length);
      }
    }
  });

  it('has the lines that are seen, at their places, as wide as the drawing’s', () => {
    const { lines, ...rest } = spaceScene(scene().plan);
    const camera = cameraOf({ lines, ...rest }, looks.corner.look, 900, 600);
    const style = screenStyle(900);
    for (const line of lines) {
      const { here, there, aside, colour } = lineBuffers([line], camera, palette, style);
      if (!isSeen(line, camera)) {
        expect(here).toHaveLength(0);
        continue;
      }
      expect(here).toHaveLength(18);
      expect(there).toHaveLength(18);
      const ends = places(here);
      for (const end of ends) {
        expect(Math.min(length(subtract(end, line.from)), length(subtract(end, line.to)))).toBeLessThan(SINGLE);
      }
      // Its two sides are its width apart: 1 narrow, 2 wide, 1.4 for an axis.
      expect(Math.max(...aside) - Math.min(...aside)).toBeCloseTo(WIDTHS.get(line.pen) ?? NaN, 6);
      expect(colour[0]).toBeCloseTo(lineColour(line, palette)[0] / 255, 6);
    }
  });

  it('shades a face the more, the further it is turned from the light, and not at all where the system gives the colours', () => {
    const [top, front] = [vec3(0, 0, 1), vec3(0, 0, -1)].map(
      (normal) => ({ subject: 'desk', corners: [], normal, faint: false, layer: 0 }) as const,
    );
    if (!top || !front) throw new Error('two faces');
    const [lit, dark] = [faceColour(top, palette), faceColour(front, palette)];
    expect(dark[1]).toBeLessThan(lit[1]);
    expect(faceColour(front, { ...palette, unshaded: true })).toEqual(palette.colours.desk.tint);
    expect(faceColour({ ...front, faint: true }, { ...palette, unshaded: true })[0]).toBeGreaterThan(
      palette.colours.desk.tint[0],
    );
  });
});
