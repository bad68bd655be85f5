import type { Path } from './contour.ts';

/** The same path run the other way. */
export function reversed(path: Path): Path {
  const { vertices } = path;
  const last = vertices.length - 1;
  return {
    ...path,
    vertices: vertices.map((_, i) => {
      const { x, y } = vertices[last - i] ?? { x: 0, y: 0 };
      // The edge that now leaves this corner is the one that used to arrive at it.
      const arriving = vertices.at(last - i - 1);
      const joined = path.closed || i < last;
      return { x, y, bulge: joined && arriving ? 0 - arriving.bulge : 0 };
    }),
  };
}
