import { radians } from '$lib/geometry/angle.ts';
import { along, type Point, type Vec3 } from '$lib/geometry/point.ts';
import { monitorBodies } from '$lib/layout/bodies.ts';
import { bendOf, flatFace, squareAt } from '$lib/project/screenFaces.ts';
import type { Monitor } from '$lib/project/project.ts';
import { rectangle } from './box.ts';
import { convexHull } from './hull.ts';

/** A bend is drawn in pieces that turn by so much at most, radians: no eye sees their corners. */
const PIECE = radians(3);

const isPlain = ({ turn, lean, curve }: Monitor): boolean => turn === 0 && lean === 0 && curve === null;

/** A screen's outline from above; of a curved one that of its lower edge. */
export function screenFromAbove(monitor: Monitor): readonly Point[] {
  const { x, y, width, depth } = monitor;
  if (isPlain(monitor)) return rectangle([x - width / 2, y, x + width / 2, y + depth]);
  const bend = bendOf(monitor, PIECE);
  if (bend === null) return hullOf(monitor, fromAbove);
  const face = flatFace(monitor);
  const back = bend.map(({ point, angle }) => along(point, squareAt(face, angle), -depth));
  return [...bend.map(({ point }) => point), ...back.reverse()].map(fromAbove);
}

/** The same from the desk's right-hand end. */
export function screenFromSide(monitor: Monitor): readonly Point[] {
  const { y, depth, bottom, height } = monitor;
  if (isPlain(monitor)) return rectangle([y, bottom, y + depth, bottom + height]);
  return hullOf(monitor, ({ y, z }) => [y, z]);
}

const fromAbove = ({ x, y }: Vec3): Point => [x, y];

const hullOf = (monitor: Monitor, flat: (point: Vec3) => Point): readonly Point[] =>
  convexHull(monitorBodies(monitor).flatMap(({ vertices }) => vertices.map(flat)));
