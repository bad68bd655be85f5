import type { Path, Vertex } from './contour.ts';
import { edgesOf, pointAt, type Edge } from './edge.ts';
import { inner, minus, norm, outer, rightOf } from './plane.ts';
import type { Point } from './point.ts';

/**
 * What of a closed path lies on the left of a line, arcs as arcs. Where that is in several parts they hang together along
 * the line, so that area and moments are right; null where nothing is.
 */
export function partBeyond(path: Path, from: Point, to: Point): Path | null {
  const beyond = ([x, y]: Point): number => outer(minus(to, from), minus([x, y], from));
  const kept = edgesOf(path).flatMap((edge) =>
    stretches(edge, from, to)
      .filter(({ start, end }) => beyond(pointAt(edge, (start + end) / 2)) > 0)
      .map((one) => ({ edge, ...one })),
  );
  if (kept.length === 0) return null;
  const vertices = kept.flatMap(({ edge, start, end }): Vertex[] => [
    vertex(pointAt(edge, start), edge.kind === 'arc' ? Math.tan((edge.sweep * (end - start)) / 4) : 0),
    vertex(pointAt(edge, end), 0),
  ]);
  return { kind: 'path', closed: true, vertices };
}

const vertex = ([x, y]: Point, bulge: number): Vertex => ({ x, y, bulge });

/** An edge between the places, as fractions of its length, where it crosses a line. */
function stretches(edge: Edge, from: Point, to: Point): { start: number; end: number }[] {
  const inside = crossings(edge, from, to).filter((at) => at > 0 && at < 1);
  const places = [0, ...inside.sort((a, b) => a - b), 1];
  return places.slice(1).map((end, i) => ({ start: places[i] ?? 0, end }));
}

function crossings(edge: Edge, from: Point, to: Point): number[] {
  const along = minus(to, from);
  const off = (point: Point): number => outer(along, minus(point, from)) / norm(along);
  if (edge.kind === 'straight') {
    const [a, b] = [off(edge.start), off(edge.end)];
    return a === b ? [] : [a / (a - b)];
  }
  const share = -off(edge.centre) / edge.radius;
  if (Math.abs(share) >= 1) return [];
  // From the direction to the line's left, both ways round.
  const left = minus([0, 0], rightOf(along));
  const [x, y] = minus(edge.start, edge.centre);
  const begins = Math.atan2(outer(left, [x, y]), inner(left, [x, y]));
  const turn = 2 * Math.PI;
  return [Math.acos(share), -Math.acos(share)].map((angle) => {
    const ahead = Math.sign(edge.sweep) * (angle - begins);
    return (((ahead % turn) + turn) % turn) / Math.abs(edge.sweep);
  });
}
