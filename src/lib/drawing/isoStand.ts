import { vec3, type Point, type Vec3 } from '$lib/geometry/point.ts';
import type { StandPlan } from '$lib/solution/document.ts';
import { isometric } from './isometric.ts';
import { seenFaces, type SeenFace } from './prismSeen.ts';
import type { Item, Outline, Rank } from './view.ts';

/** Corners of the polygon that stands for a hole's rim: 0.1 % of the radius from the true one at most. */
const STEPS = 72;
/** Corners of profile and slice that differ by more than this are parted by veneer, mm. */
const SAME = 1e-6;

/** One stand by itself in its own axes: the faces in sight, joints of its layers, and rod holes in the near end. */
export function isoStand(stand: StandPlan): Item[] {
  const { profile, width } = stand;
  const faces = seenFaces(profile, width);
  return [
    ...faces.map(({ edge, loop }) => face(`stand-face-${edge}`, loop)),
    face(
      'stand-end',
      profile.map(([y, z]) => vec3(width / 2, y, z)),
    ),
    ...(isVeneered(stand) ? [] : joints(stand, faces)),
    ...holes(stand),
  ];
}

const shape = (id: string, corners: readonly Vec3[], rest: Pick<Outline, 'pen' | 'closed' | 'filled'>): Item => ({
  kind: 'outline',
  id,
  subject: 'stand',
  points: corners.map(isometric.flat),
  ...rest,
});

const face = (id: string, corners: readonly Vec3[]): Item =>
  shape(id, corners, { pen: 'wide', closed: true, filled: true });

/** Veneer covers the joints and the holes. */
const isVeneered = ({ profile, slice }: StandPlan): boolean =>
  profile.some(([u, z], index) => {
    const [su, sz] = slice[index] ?? [NaN, NaN];
    return !(Math.abs(su - u) <= SAME && Math.abs(sz - z) <= SAME);
  });

/**
 * Least gap between the joints that a rank shows, mm: lines 0.7 mm apart, as near as ISO 128 lets parallel lines come (from
 * memory), at the smallest scale with room for the rank (for the fourth, at 1:5).
 */
const LEAST_GAP: readonly (readonly [Rank, number])[] = [
  [1, 28],
  [2, 15],
  [4, 3.5],
];
/** A joint is drawn, or every second, fifth, tenth… */
const STRIDES = [1, 2, 5];

function strideFor(gap: number, least: number): number {
  for (let ten = 1; ; ten *= 10) {
    const stride = STRIDES.find((step) => step * ten * gap >= least);
    if (stride !== undefined) return stride * ten;
  }
}

/** The joints between layers, on every face in sight, as many as stay legible. */
function joints({ width, thickness, layers }: StandPlan, faces: readonly SeenFace[]): Item[] {
  if (layers < 2) return [];
  const pitch = (width - thickness) / (layers - 1);
  // Along the axis that runs to the right, drawn lines lie this far apart across the paper.
  const strides = LEAST_GAP.map(([rank, least]) => [rank, strideFor(pitch / Math.SQRT2, least)] as const);
  return Array.from({ length: layers - 1 }, (_, index) => index + 1).flatMap((joint) => {
    const [rank] = strides.find(([, stride]) => joint % stride === 0) ?? [];
    if (rank === undefined) return [];
    const x = (thickness - width) / 2 + (joint - 0.5) * pitch;
    return faces.flatMap(({ edge, lineAt }) =>
      lineAt(x).map((ends, part) => ({
        ...shape(`joint-${joint}-${edge}-${part}`, ends, { pen: 'narrow', closed: false, filled: false }),
        rank,
      })),
    );
  });
}

/** Rims of the rod holes in the near end; dashed where veneer covers them. */
function holes(stand: StandPlan): Item[] {
  const { rods, width } = stand;
  const pen = isVeneered(stand) ? 'hidden' : 'wide';
  return rods.map(({ u, z, diameter }, index) => {
    const rim = Array.from({ length: STEPS }, (_, step): Point => {
      const angle = (2 * Math.PI * step) / STEPS;
      return [u + (diameter / 2) * Math.cos(angle), z + (diameter / 2) * Math.sin(angle)];
    });
    return shape(
      `rod-hole-${index}`,
      rim.map(([y, up]) => vec3(width / 2, y, up)),
      { pen, closed: true, filled: false },
    );
  });
}
