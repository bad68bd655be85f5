import type { Vec3 } from '$lib/geometry/point.ts';
import type { DimensionStyle } from '$lib/drawing/dimensionStyle.ts';
import { penStroke } from '$lib/drawing/pens.ts';
import { faceColour, lineColour, type Palette, type Rgb } from './colour.ts';
import { depthOf, type Camera } from './look.ts';
import { triangles } from './pieces.ts';
import { isSeen } from './seen.ts';
import type { SpaceFace, SpaceLine } from './space.ts';

/** Numbers as a graphics processor takes them, corner by corner: three of a place, and red, green and blue 0 to 1. */
export interface FaceBuffers {
  readonly position: Float32Array;
  readonly colour: Float32Array;
}

/** The same of lines, each two triangles. */
export interface LineBuffers {
  /** The end that a corner is at, and the other one. */
  readonly here: Float32Array;
  readonly there: Float32Array;
  /** How far the corner is moved aside, seen from here to there: half the line's width, px, to the left positive. */
  readonly aside: Float32Array;
  readonly colour: Float32Array;
}

const placeOf = ({ x, y, z }: Vec3): number[] => [x, y, z];
const shareOf = (colour: Rgb): number[] => colour.map((value) => value / 255);

export function faceBuffers(faces: readonly SpaceFace[], palette: Palette): FaceBuffers {
  const corners = faces.flatMap((face) => {
    const colour = shareOf(faceColour(face, palette));
    return triangles(face.corners, face.normal).flatMap((triangle) => triangle.map((place) => ({ place, colour })));
  });
  return {
    position: new Float32Array(corners.flatMap(({ place }) => placeOf(place))),
    colour: new Float32Array(corners.flatMap(({ colour }) => colour)),
  };
}

/** The lines that are there to be seen from a place; those too near to the eye are left out. */
export function lineBuffers(
  lines: readonly SpaceLine[],
  camera: Camera,
  palette: Palette,
  style: DimensionStyle,
): LineBuffers {
  const seen = lines.filter(
    (line) => isSeen(line, camera) && Math.min(depthOf(camera, line.from), depthOf(camera, line.to)) >= camera.near,
  );
  const corners = seen.flatMap((line) => {
    const colour = shareOf(lineColour(line, palette));
    const half = penStroke(line.pen, style).width / 2;
    const { from, to } = line;
    const at = (aside: number) => ({ here: from, there: to, aside, colour });
    // Seen the other way, left is right.
    const end = (aside: number) => ({ here: to, there: from, aside: -aside, colour });
    return [at(half), at(-half), end(half), end(half), at(-half), end(-half)];
  });
  return {
    here: new Float32Array(corners.flatMap(({ here }) => placeOf(here))),
    there: new Float32Array(corners.flatMap(({ there }) => placeOf(there))),
    aside: new Float32Array(corners.map(({ aside }) => aside)),
    colour: new Float32Array(corners.flatMap(({ colour }) => colour)),
  };
}
