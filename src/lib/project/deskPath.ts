import { signedArea } from '$lib/geometry/area.ts';
import { polygonPath, type Path, type Vertex } from '$lib/geometry/contour.ts';
import type { Point } from '$lib/geometry/point.ts';
import { reversed } from '$lib/geometry/reversed.ts';
import { roundCorners } from '$lib/geometry/roundCorners.ts';
import type { DeskOutline } from './project.ts';

type Rule<Name extends DeskOutline['rule']> = Extract<DeskOutline, { readonly rule: Name }>;

/**
 * The desk's top as its rule draws it, counter-clockwise, the origin in the point of its front edge straight before the
 * listener's place: the middle of the straight front, of what an L leaves free of it, of a corner desk's cut corner, of a
 * bow. Of sizes that do not go together it may cross itself.
 */
export function deskPath(outline: DeskOutline): Path {
  switch (outline.rule) {
    case 'rectangle':
      return rectangle(outline);
    case 'bowed':
      return bowed(outline);
    case 'corner':
      return polygonPath(cornerDesk(outline));
    case 'l':
      return polygonPath(lDesk(outline));
    case 'outline':
      return free(outline);
  }
}

function rectangle({ width, depth, corner }: Rule<'rectangle'>): Path {
  const points: Point[] = [
    [-width / 2, 0],
    [width / 2, 0],
    [width / 2, depth],
    [-width / 2, depth],
  ];
  return corner === 0 ? polygonPath(points) : roundCorners(points, corner, () => true).path;
}

/** The bulge of an arc is twice its rise over its chord: the tangent of a quarter of its angle. */
function bowed({ width, depth, bow }: Rule<'bowed'>): Path {
  const half = width / 2;
  const vertices: Vertex[] = [
    { x: -half, y: bow, bulge: (2 * bow) / width },
    { x: half, y: bow, bulge: 0 },
    { x: half, y: depth, bulge: 0 },
    { x: -half, y: depth, bulge: 0 },
  ];
  return { kind: 'path', closed: true, vertices };
}

/**
 * Seen in its walls: the corner at (0, 0), the left wing along a, the right one along b, and the corner between the wings
 * cut at 45° by the front. The seat looks from the front's middle into the corner.
 */
function cornerDesk({ left, right, leftDepth, rightDepth, front }: Rule<'corner'>): Point[] {
  const cut = front * Math.SQRT1_2;
  const corners: Point[] = [
    [rightDepth + cut, leftDepth],
    [rightDepth, leftDepth + cut],
    [rightDepth, right],
    [0, right],
    [0, 0],
    [left, 0],
    [left, leftDepth],
  ];
  const [a, b] = [rightDepth + cut / 2, leftDepth + cut / 2];
  const placed = corners.map(([x, y]): Point => [(y - b - (x - a)) * Math.SQRT1_2, (a - x + (b - y)) * Math.SQRT1_2]);
  // A wing no longer than the front needs has no edge of its own there.
  return placed.filter(([x, y], i) => {
    const [nextX, nextY] = placed[(i + 1) % placed.length] ?? [x, y];
    return Math.hypot(nextX - x, nextY - y) > SAME;
  });
}

/** Corners nearer to each other than this are one, mm. */
const SAME = 1e-6;

/** The return comes towards the listener at one end; the origin is the middle of what is free of the front edge. */
function lDesk({ width, depth, return: { side, width: wide, length } }: Rule<'l'>): Point[] {
  const half = (width - wide) / 2;
  const points: Point[] = [
    [-half, 0],
    [half, 0],
    [half, -length],
    [half + wide, -length],
    [half + wide, depth],
    [-half, depth],
  ];
  return side === 'right' ? points : points.map(([x, y]): Point => [0 - x, y]).reverse();
}

function free({ points }: Rule<'outline'>): Path {
  const vertices = points.map(([x, y, bulge = 0]): Vertex => ({ x, y, bulge }));
  const path: Path = { kind: 'path', closed: true, vertices };
  return signedArea(path) < 0 ? reversed(path) : path;
}
