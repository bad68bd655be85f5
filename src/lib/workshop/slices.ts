import { circle, polygonPath } from '$lib/geometry/contour.ts';
import type { Point } from '$lib/geometry/point.ts';
import type { SideName } from '$lib/project/project.ts';
import type { StandBody } from '$lib/stand/build.ts';
import { labelInside } from './label.ts';
import type { Part } from './part.ts';

/** Slices whose corners and holes agree this well are one part: files are written to 0.001 mm. */
const SAME = 1e-6;

/** The parts of two stacked stands, and which of them each stand is made of. */
export interface SliceParts {
  readonly parts: readonly Part[];
  readonly partOf: Readonly<Record<SideName, string>>;
}

/** One part when both stands have the same slice, two that are told apart by name and label when they differ. */
export function sliceParts(stands: Readonly<Record<SideName, StandBody>>): SliceParts {
  const { left, right } = stands;
  if (alike(left, right)) {
    return {
      parts: [slicePart('slice', left, left.layers + right.layers)],
      partOf: { left: 'slice', right: 'slice' },
    };
  }
  const [nameLeft, nameRight] = ['slice-left', 'slice-right'];
  return {
    parts: [slicePart(nameLeft, left, left.layers), slicePart(nameRight, right, right.layers)],
    partOf: { left: nameLeft, right: nameRight },
  };
}

function alike(a: StandBody, b: StandBody): boolean {
  const near = (p: Point, q: Point | undefined): boolean =>
    q !== undefined && Math.abs(p[0] - q[0]) <= SAME && Math.abs(p[1] - q[1]) <= SAME;
  const holes = ({ rods }: StandBody): Point[] => rods.map(({ u, z }) => [u, z]);
  return (
    a.slice.length === b.slice.length &&
    a.slice.every((corner, i) => near(corner, b.slice[i])) &&
    a.rods.length === b.rods.length &&
    holes(a).every((hole, i) => near(hole, holes(b)[i]))
  );
}

function slicePart(name: string, stand: StandBody, quantity: number): Part {
  const left = Math.min(...stand.slice.map(([u]) => u));
  const low = Math.min(...stand.slice.map(([, z]) => z));
  const corners = stand.slice.map(([u, z]): Point => [u - left, z - low]);
  const holes = stand.rods.map(({ u, z, diameter }) => circle([u - left, z - low], diameter / 2));
  const length = Math.max(...corners.map(([x]) => x));
  return {
    name,
    stock: stand.stock,
    thickness: stand.thickness,
    quantity,
    outside: polygonPath(corners),
    inside: holes,
    mark: [],
    labels: labelInside(corners, widestGap(holes, length), [
      `← FRONT · ${name.toUpperCase()}`,
      `← ${name.toUpperCase()}`,
      '← F',
      '←',
    ]),
  };
}

/** The longest stretch without a hole, from one end of the slice to the other. */
function widestGap(
  holes: readonly { readonly centre: Point; readonly radius: number }[],
  length: number,
): { from: number; to: number } {
  const stops = [
    { from: 0, to: 0 },
    ...holes.map(({ centre: [x], radius }) => ({ from: x - radius, to: x + radius })).sort((a, b) => a.from - b.from),
    { from: length, to: length },
  ];
  const gaps = stops.slice(1).map((stop, i) => ({ from: stops[i]?.to ?? 0, to: stop.from }));
  return gaps.reduce((a, b) => (b.to - b.from > a.to - a.from ? b : a));
}
