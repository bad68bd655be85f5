import fc from 'fast-check';
import { circle, polygonPath, type Circle, type Path } from '$lib/geometry/contour.ts';
import type { Body } from '$lib/workshop/body.ts';

export const rectangle = (x: number, y: number, width: number, height: number): Path =>
  polygonPath([[x, y], [x + width, y], [x + width, y + height], [x, y + height]]); // prettier-ignore

/** A slot with round ends, run clockwise as holes are. */
const slot = (x: number, y: number, length: number, width: number): Path => ({
  kind: 'path',
  closed: true,
  vertices: [
    { x, y, bulge: 0 },
    { x, y: y + length, bulge: -1 },
    { x: x + width, y: y + length, bulge: 0 },
    { x: x + width, y, bulge: -1 },
  ],
});

/** One hole to a place on a grid: rows and columns line up, which is what triangulation finds hard. */
const anyHole = fc
  .record({ place: fc.nat(19), kind: fc.nat(3), size: fc.integer({ min: 1, max: 6 }) })
  .map(({ place, kind, size }): { readonly place: number; readonly contour: Path | Circle } => {
    const [x, y] = [10 + (place % 5) * 20, 10 + Math.floor(place / 5) * 20];
    const contours = [circle([x, y], size), rectangle(x - size, y - 5, 2 * size, 10), slot(x - 3, y - 4, 8, 6)];
    return { place, contour: contours[kind] ?? rectangle(x - 6, y - 6, 12, size) };
  });
const anyHoles = fc
  .uniqueArray(anyHole, { maxLength: 14, selector: ({ place }) => place })
  .map((holes) => holes.map(({ contour }) => contour));

const outlines: readonly Path[] = [
  rectangle(0, 0, 110, 90),
  polygonPath([[0, 0], [110, 0], [110, 110], [0, 90]]), // prettier-ignore
  {
    kind: 'path',
    closed: true,
    vertices: [
      { x: 0, y: 0, bulge: 0 },
      { x: 110, y: 0, bulge: Math.SQRT2 - 1 },
      { x: 120, y: 10, bulge: 0 },
      { x: 120, y: 90, bulge: 1 },
      { x: 0, y: 90, bulge: -0.01 },
    ],
  },
];
const height = fc.integer({ min: 1, max: 400 }).map((tenths) => tenths / 10);

/** One level with an outline and holes. */
export const anyPlateBody: fc.Arbitrary<Body> = fc
  .record({ outline: fc.constantFrom(...outlines), holes: anyHoles, height })
  .map(({ outline, holes, height }) => ({ name: 'plate', levels: [{ height, contours: [outline, ...holes] }] }));

/** Several levels with one outline, each with some of the holes: pockets from above, from below and within. */
export const anySteppedBody: fc.Arbitrary<Body> = fc
  .record({
    outline: fc.constantFrom(...outlines),
    holes: anyHoles,
    levels: fc.array(fc.record({ height, picks: fc.array(fc.boolean(), { minLength: 14, maxLength: 14 }) }), {
      minLength: 2,
      maxLength: 4,
    }),
  })
  .map(({ outline, holes, levels }) => ({
    name: 'steps',
    levels: levels.map(({ height, picks }) => ({ height, contours: [outline, ...holes.filter((_, i) => picks[i])] })),
  }));
