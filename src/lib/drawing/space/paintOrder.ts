import { between, dot, type Vec3 } from '$lib/geometry/point.ts';
import { areaVector } from './body.ts';
import { convexPieces } from './pieces.ts';
import type { SpaceFace, SpaceLine } from './space.ts';

/**
 * The order in which faces and lines are painted so that what is nearer covers what is farther, exact for any faces, also for
 * those that pass through each other: binary space partitioning (H. Fuchs, Z. M. Kedem and B. F. Naylor, 1980). The planes of
 * faces part the space in two, again and again; what lies in two parts is cut.
 */

/** A convex piece of a face. */
interface Piece {
  readonly face: SpaceFace;
  readonly corners: readonly Vec3[];
}

interface Plane {
  readonly normal: Vec3;
  /** Of its points along the normal, mm. */
  readonly offset: number;
}

/** A part of space, parted by the plane of the faces in it. */
export interface Part {
  readonly plane: Plane;
  readonly pieces: readonly Piece[];
  readonly before: Part | null;
  readonly behind: Part | null;
}

/** Nothing thicker than this is cut off, mm: a tenth of a hair. */
const DUST = 0.005;

/** The parting of the faces of a scene; it serves every eye. */
export const partingOf = (scene: readonly SpaceFace[]): Part | null =>
  parted(
    scene
      .flatMap((face) => convexPieces(face.corners, face.normal).map((corners): Piece => ({ face, corners })))
      // The large ones first: then the small bodies are cut by few planes.
      .map((piece) => ({ piece, area: dot(areaVector(piece.corners), piece.face.normal) }))
      .sort((a, b) => b.area - a.area)
      .map(({ piece }) => piece),
  );

function parted(pieces: readonly Piece[]): Part | null {
  const [first] = pieces;
  const [corner] = first?.corners ?? [];
  if (!first || !corner) return null;
  const { normal } = first.face;
  const plane = { normal, offset: dot(normal, corner) };
  const [before, on, behind]: [Piece[], Piece[], Piece[]] = [[], [], []];
  for (const piece of pieces) {
    const heights = heightsOver(plane, piece.corners);
    const [over, under] = [Math.max(...heights) > DUST, Math.min(...heights) < -DUST];
    if (piece === first || (!over && !under)) on.push(piece);
    else if (!under) before.push(piece);
    else if (!over) behind.push(piece);
    else {
      before.push({ ...piece, corners: cutOff(piece.corners, heights, 1) });
      behind.push({ ...piece, corners: cutOff(piece.corners, heights, -1) });
    }
  }
  return { plane, pieces: on, before: parted(before), behind: parted(behind) };
}

const heightsOver = ({ normal, offset }: Plane, corners: readonly Vec3[]): number[] =>
  corners.map((corner) => dot(normal, corner) - offset);

/** What of a convex polygon lies on one side of a plane; `side`: 1 where its normal points to, −1 on the other. */
export function cutOff(corners: readonly Vec3[], heights: readonly number[], side: 1 | -1): Vec3[] {
  return corners.flatMap((corner, index) => {
    const next = (index + 1) % corners.length;
    const [here, there] = [side * (heights[index] ?? 0), side * (heights[next] ?? 0)];
    const kept = here >= 0 ? [corner] : [];
    if (here >= 0 === there >= 0 || here === 0 || there === 0) return kept;
    return [...kept, between(corner, corners[next] ?? corner, here / (here - there))];
  });
}

/** What is painted. */
export interface Painter {
  readonly face: (face: SpaceFace, corners: readonly Vec3[]) => void;
  readonly line: (line: SpaceLine, from: Vec3, to: Vec3) => void;
}

/** A stretch of a line. */
interface Stretch {
  readonly line: SpaceLine;
  readonly from: Vec3;
  readonly to: Vec3;
}

/** Paints everything, what is farther from the eye first; faces turned away are left out. A line in a face lies on it. */
export function paint(part: Part | null, lines: readonly SpaceLine[], eye: Vec3, painter: Painter): void {
  painted(
    part,
    lines.map((line) => ({ line, from: line.from, to: line.to })),
    eye,
    painter,
  );
}

function painted(part: Part | null, stretches: readonly Stretch[], eye: Vec3, painter: Painter): void {
  if (part === null) {
    for (const { line, from, to } of stretches) painter.line(line, from, to);
    return;
  }
  const { plane, pieces } = part;
  const seenFrom = dot(plane.normal, eye) - plane.offset;
  const isBefore = seenFrom > 0;
  const [near, far]: [Stretch[], Stretch[]] = [[], []];
  const towards = isBefore ? 1 : -1;
  for (const stretch of stretches) {
    const from = towards * (dot(plane.normal, stretch.from) - plane.offset);
    const to = towards * (dot(plane.normal, stretch.to) - plane.offset);
    if (from >= -DUST && to >= -DUST) near.push(stretch);
    else if (from <= DUST && to <= DUST) far.push(stretch);
    else {
      const middle = between(stretch.from, stretch.to, from / (from - to));
      (from > 0 ? near : far).push({ line: stretch.line, from: stretch.from, to: middle });
      (from > 0 ? far : near).push({ line: stretch.line, from: middle, to: stretch.to });
    }
  }
  painted(isBefore ? part.behind : part.before, far, eye, painter);
  const turned = pieces.filter(({ face }) => dot(face.normal, plane.normal) > 0 === isBefore);
  for (const layer of [0, 1]) {
    for (const { face, corners } of turned) if (face.layer === layer) painter.face(face, corners);
  }
  painted(isBefore ? part.before : part.behind, near, eye, painter);
}
