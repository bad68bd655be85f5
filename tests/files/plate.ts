import { circle, openPath, polygonPath, type Contour, type Path } from '$lib/geometry/contour.ts';
import type { Plate } from '$lib/files/plate.ts';

/** A plate with one of everything: straight edges, a rounded corner, a slot of half turns, a circle, an open mark. */
export const everything: Plate = {
  name: 'Left & right <wedge>',
  width: 120,
  height: 50,
  layers: {
    outside: [
      {
        kind: 'path',
        closed: true,
        vertices: [
          { x: 0, y: 0, bulge: 0 },
          { x: 110, y: 0, bulge: Math.tan(Math.PI / 8) },
          { x: 120, y: 10, bulge: 0 },
          { x: 120, y: 50, bulge: 0 },
          { x: 0, y: 20, bulge: 0 },
        ],
      },
    ],
    inside: [
      circle([15, 10], 3.05),
      {
        kind: 'path',
        closed: true,
        vertices: [
          { x: 60, y: 10, bulge: 0 },
          { x: 60, y: 20, bulge: -1 },
          { x: 66, y: 20, bulge: 0 },
          { x: 66, y: 10, bulge: -1 },
        ],
      },
    ],
    engrave: [openPath([[30, 5], [40, 5.0004]])], // prettier-ignore
  },
};

export const plateOf = (...outside: readonly Contour[]): Plate => ({
  name: 'test part',
  width: 100,
  height: 100,
  layers: { outside, inside: [], engrave: [] },
});

export const square = (side: number): Path => polygonPath([[0, 0], [side, 0], [side, side], [0, side]]); // prettier-ignore
