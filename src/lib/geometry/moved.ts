import type { Circle, Contour, Path } from './contour.ts';

/** The same contour, moved. */
export function moved<Kind extends Path | Circle>(contour: Kind, by: readonly [number, number]): Kind;
export function moved(contour: Contour, [x, y]: readonly [number, number]): Contour {
  return contour.kind === 'circle'
    ? { kind: 'circle', centre: [contour.centre[0] + x, contour.centre[1] + y], radius: contour.radius }
    : {
        kind: 'path',
        closed: contour.closed,
        vertices: contour.vertices.map((v) => ({ x: v.x + x, y: v.y + y, bulge: v.bulge })),
      };
}
