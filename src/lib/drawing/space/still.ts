import type { Point, Vec3 } from '$lib/geometry/point.ts';
import { penStroke } from '$lib/drawing/pens.ts';
import type { DimensionStyle } from '$lib/drawing/dimensionStyle.ts';
import { faceColour, lineColour, type Palette, type Rgb } from './colour.ts';
import { depthOf, project, type Camera } from './look.ts';
import { cutOff, paint, type Part } from './paintOrder.ts';
import { isSeen } from './seen.ts';
import type { SpaceScene } from './space.ts';

/** What a still picture is drawn of, in this order: areas and lines of one look each, px with y down. */
export interface StillShape {
  readonly kind: 'area' | 'line';
  readonly paths: readonly (readonly Point[])[];
  readonly colour: Rgb;
  /** Of the line. An area has one too, thin and of its own colour: what was cut shows no seam. */
  readonly width: number;
}

/** Width of the line that covers the seams of what was cut, px. */
const SEAM = 0.6;

/**
 * The scene as it is seen, what is nearer over what is farther.
 *
 * @param part its faces parted for painting (`partingOf`).
 */
export function stillOf(
  scene: SpaceScene,
  part: Part | null,
  camera: Camera,
  palette: Palette,
  style: DimensionStyle,
): StillShape[] {
  const shapes: { kind: StillShape['kind']; paths: (readonly Point[])[]; colour: Rgb; width: number }[] = [];
  const add = (kind: StillShape['kind'], corners: readonly Vec3[], colour: Rgb, width: number): void => {
    const path = corners.map((corner) => project(camera, corner));
    const last = shapes.at(-1);
    // What looks alike is one shape, whatever lies over what.
    if (last?.kind === kind && last.width === width && last.colour.every((value, index) => value === colour[index]))
      last.paths.push(path);
    else shapes.push({ kind, paths: [path], colour, width });
  };
  const lines = scene.lines.filter((line) => isSeen(line, camera));
  paint(part, lines, camera.eye, {
    face: (face, corners) => {
      const before = beforeEye(corners, camera);
      if (before.length >= 3) add('area', before, faceColour(face, palette), SEAM);
    },
    line: (line, from, to) => {
      if (Math.min(depthOf(camera, from), depthOf(camera, to)) < camera.near) return;
      add('line', [from, to], lineColour(line, palette), penStroke(line.pen, style).width);
    },
  });
  return shapes;
}

/** What of a convex polygon is not too near to the eye to be drawn. */
function beforeEye(corners: readonly Vec3[], camera: Camera): readonly Vec3[] {
  const heights = corners.map((corner) => depthOf(camera, corner) - camera.near);
  return heights.every((height) => height >= 0) ? corners : cutOff(corners, heights, 1);
}
