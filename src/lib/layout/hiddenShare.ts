import { signedArea } from '$lib/geometry/area.ts';
import { polygonPath } from '$lib/geometry/contour.ts';
import { overlapConvex } from '$lib/geometry/clipConvex.ts';
import { convexHull } from '$lib/geometry/convexHull.ts';
import { between, dot, vec3, type Point, type Vec3 } from '$lib/geometry/point.ts';
import type { Solid } from '$lib/geometry/solid.ts';
import type { Monitor } from '$lib/project/project.ts';
import { facesOf, type ScreenFace } from '$lib/project/screenFaces.ts';

/** What lies nearer to the eyes than this is left out, mm: nobody looks past a cabinet at their nose, and it would have no end in perspective. */
const NEAREST = 1;

/**
 * The share of a screen's face, 0…1, that a cabinet hides from an eye: the cabinet's shadow on the plane of the face, as
 * far as the cabinet stands between the two; of a curved one the same of each strip. 0 for an eye behind the screen.
 *
 * @param cabinet Six-sided.
 */
export function hiddenShare(cabinet: Solid, monitor: Monitor, eye: Vec3): number {
  const faces = facesOf(monitor);
  const all = faces.reduce((sum, { width }) => sum + width, 0);
  return faces.reduce((sum, face) => sum + hiddenOf(cabinet, face, eye) * (face.width / all), 0);
}

function hiddenOf({ vertices }: Solid, face: ScreenFace, seenFrom: Vec3): number {
  const { width, height } = face;
  const inFace = asSeenBy(face);
  const [eye, { x, y, z: bottom }] = [inFace(seenFrom), inFace(face.middle)];
  if (y - eye.y <= NEAREST) return 0;
  const shadow = convexHull(slab(vertices.map(inFace), eye.y + NEAREST, y).map((at) => onto(at, eye, y)));
  if (shadow.length < 3) return 0;
  const outline: Point[] = [
    [x - width / 2, bottom],
    [x + width / 2, bottom],
    [x + width / 2, bottom + height],
    [x - width / 2, bottom + height],
  ];
  const hidden = overlapConvex(outline, shadow);
  return hidden.length < 3 ? 0 : signedArea(polygonPath(hidden)) / (width * height);
}

/** A point in the directions of a face: along its lower edge, away from the eye, and up it. */
const asSeenBy =
  ({ across, normal, up }: ScreenFace) =>
  (point: Vec3): Vec3 =>
    vec3(dot(point, across), 0 - dot(point, normal), dot(point, up));

/** Where a line of sight through a point meets the plane of the face, in (x, z). */
function onto({ x, y, z }: Vec3, eye: Vec3, plane: number): Point {
  const share = (plane - eye.y) / (y - eye.y);
  return [eye.x + (x - eye.x) * share, eye.z + (z - eye.z) * share];
}

/** Points whose hull is what of a convex body lies between two planes square to y: its corners there, and where lines between corners cross the planes. */
function slab(vertices: readonly Vec3[], near: number, far: number): Vec3[] {
  const inside = vertices.filter(({ y }) => y >= near && y <= far);
  if (inside.length === vertices.length) return inside;
  const crossings = vertices.flatMap((from, i) =>
    vertices
      .slice(i + 1)
      .flatMap((to) =>
        [near, far].flatMap((plane) =>
          from.y < plane !== to.y < plane ? [between(from, to, (plane - from.y) / (to.y - from.y))] : [],
        ),
      ),
  );
  return [...inside, ...crossings];
}
