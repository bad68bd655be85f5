import fc from 'fast-check';
import { circle, polygonPath, type Path } from '$lib/geometry/contour.ts';
import type { Part } from '$lib/workshop/part.ts';
import type { Point } from '$lib/geometry/point.ts';

/** A stock that the beam cuts as the cutter says, its speeds and price unknown; no grain, as many sheets as it takes. */
export const asCutter = {
  kerf: null,
  taper: null,
  feed: null,
  price: null,
  solidPrice: null,
  grain: 'none',
  sheets: null,
  offcuts: [],
} as const;

export const partOf = (name: string, outside: Path, more: Partial<Part> = {}): Part => ({
  name,
  stock: 'board',
  thickness: 3,
  quantity: 1,
  outside,
  inside: [],
  mark: [],
  labels: [],
  ...more,
});

/** A plumb-ended wedge, thin end at the left: corners counter-clockwise from the lower left. */
export const wedgeCorners = (run: number, thin: number, thick: number): Point[] => [
  [0, 0],
  [run, 0],
  [run, thick],
  [0, thin],
];

/** A wedge with a lip of its own at the thin end: concave. */
export const lippedCorners = (run: number, thin: number, thick: number, lip: number, width: number): Point[] => [
  [0, 0],
  [run, 0],
  [run, thick],
  [width, thin + ((thick - thin) * width) / run],
  [width, thin + lip],
  [0, thin + lip],
];

/** A wedge with slots cut into its slope, as a rib has for those that cross it: very concave. */
export function slotted(run: number, thin: number, thick: number, slots: number): Path {
  const WIDTH = 6;
  const at = (x: number): number => thin + ((thick - thin) * x) / run;
  const corners = Array.from({ length: slots }, (_, i) => (run * (slots - i)) / (slots + 1)).flatMap((x): Point[] => [
    [x + WIDTH / 2, at(x + WIDTH / 2)],
    [x + WIDTH / 2, at(x) / 2],
    [x - WIDTH / 2, at(x) / 2],
    [x - WIDTH / 2, at(x - WIDTH / 2)],
  ]);
  return polygonPath([[0, 0], [run, 0], [run, thick], ...corners, [0, thin]]);
}

export const wedge = (run: number, thin: number, thick: number, more: Partial<Part> = {}): Part =>
  partOf('slice', polygonPath(wedgeCorners(run, thin, thick)), more);

/** Any wedge a desk stand might need, with two rod holes near its thick end. */
export const anyWedge = fc
  .record({
    run: fc.double({ min: 40, max: 260, noNaN: true }),
    thin: fc.double({ min: 3, max: 25, noNaN: true }),
    rise: fc.double({ min: 0, max: 60, noNaN: true }),
    lip: fc.option(fc.double({ min: 4, max: 20, noNaN: true })),
  })
  .map(({ run, thin, rise, lip }) => {
    const thick = thin + rise;
    const corners =
      lip === null ? wedgeCorners(run, thin, thick) : lippedCorners(run, thin, thick, lip + rise / 10, run / 12);
    return partOf('slice', polygonPath(corners), {
      inside: [circle([run * 0.7, thin / 2], thin / 4), circle([run * 0.9, thin / 2], thin / 4)],
    });
  });

/** A path's corners, for readers that know no arcs. */
export const cornersOf = (path: Path): { x: number; y: number }[] => path.vertices.map(({ x, y }) => ({ x, y }));
