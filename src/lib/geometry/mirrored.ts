import type { Path } from './contour.ts';

/** The same path, seen from behind: mirrored in the second axis, and turned round to keep its orientation. */
export function mirrored({ closed, vertices }: Path): Path {
  const turned = vertices.map((_, i) => vertices[vertices.length - 1 - i]);
  return {
    kind: 'path',
    closed,
    vertices: turned.map((vertex, i) => {
      // A bulge belongs to the edge that leaves its vertex; walked backwards, that is the next one's.
      const next = turned[(i + 1) % turned.length];
      return { x: -(vertex?.x ?? 0), y: vertex?.y ?? 0, bulge: next?.bulge ?? 0 };
    }),
  };
}
