import { add, scale, vec3, type Point, type Vec3 } from '$lib/geometry/point.ts';
import { ellipse } from '$lib/drawing/curve.ts';
import type { Solid } from '$lib/drawing/solid.ts';
import { DRAWN_BREADTH, HALF_LENGTH } from '$lib/drawing/headItems.ts';
import type { SideName } from '$lib/project/project.ts';
import { plainly, solidOf, type Body } from './body.ts';

/** Crown and chin over the ears, for a head of the breadth that is drawn, mm: as on the side view. */
const CROWN = 140;
const CHIN = -116;
/** Outlines of a head between them, from the chin up: height over the ears, size in the widest one's, and how far forward, mm. */
const ROWS = [
  { up: -104, size: 0.42, forward: 34 },
  { up: -78, size: 0.68, forward: 20 },
  { up: -40, size: 0.88, forward: 6 },
  { up: 0, size: 0.98, forward: 0 },
  { up: 45, size: 1, forward: -4 },
  { up: 84, size: 0.9, forward: -6 },
  { up: 116, size: 0.66, forward: -8 },
  { up: 134, size: 0.34, forward: -8 },
];
/** Half an ear: across, along and up, mm. */
const EAR = vec3(9, 17, 27);
/** Bridge, tip and wings of the nose, from the middle between the ears, mm. */
const NOSE: readonly Vec3[] = [vec3(0, 90, 22), vec3(0, 118, -26), vec3(-15, 88, -36), vec3(15, 88, -36)];
const NOSE_LOOPS = [
  [0, 2, 1],
  [0, 1, 3],
  [1, 2, 3],
  [0, 3, 2],
];

/** A head between its ears, looking along y: an oval body with a nose and two ears. `ears`: of the seat, for its breadth. */
export function headBodies(ears: Readonly<Record<SideName, Vec3>>, head: Vec3, faint: boolean): Body[] {
  const breadth = Math.abs(ears.right.x - ears.left.x);
  const size = breadth / DRAWN_BREADTH;
  const at = (offset: Vec3): Vec3 => add(head, scale(offset, size));
  const common = { ...plainly, subject: 'head', faint } as const;
  const pen = 'narrow';
  return [
    { ...common, solid: headSolid(at) },
    { ...common, pen, solid: solidOf(NOSE.map(at), NOSE_LOOPS) },
    ...[-1, 1].map((way): Body => ({
      ...common,
      pen,
      solid: earSolid(add(head, vec3((way * breadth) / 2, 0, 0)), scale(EAR, size)),
    })),
  ];
}

/** Corners of one outline of a head, and of an ear. */
const ROUND_HEAD = 20;
const ROUND_EAR = 10;
/** Rises of an ear's outlines, radians. */
const EAR_ROWS = [-2, -1, 0, 1, 2].map((row) => (row * Math.PI) / 6);

const headSolid = (at: (offset: Vec3) => Vec3): Solid =>
  stacked(
    at(vec3(0, ROWS[0]?.forward ?? 0, CHIN)),
    ROWS.map(({ up, size, forward }) =>
      oval(ROUND_HEAD, size * (DRAWN_BREADTH / 2), size * HALF_LENGTH).map(([x, y]) => at(vec3(x, y + forward, up))),
    ),
    at(vec3(0, ROWS.at(-1)?.forward ?? 0, CROWN)),
  );

/** An ellipsoid. */
const earSolid = (middle: Vec3, { x: across, y: length, z: up }: Vec3): Solid =>
  stacked(
    add(middle, vec3(0, 0, -up)),
    EAR_ROWS.map((rise) =>
      oval(ROUND_EAR, across * Math.cos(rise), length * Math.cos(rise)).map(([x, y]) =>
        add(middle, vec3(x, y, up * Math.sin(rise))),
      ),
    ),
    add(middle, vec3(0, 0, up)),
  );

const oval = (count: number, across: number, along: number): Point[] => ellipse([0, 0], across, along, count);

/** Outlines over each other with a point under and over them. They are alike, so that each patch between two is flat. */
function stacked(bottom: Vec3, rings: readonly (readonly Vec3[])[], top: Vec3): Solid {
  const round = rings[0]?.length ?? 0;
  const last = rings.length - 1;
  const [under, over] = [rings.length * round, rings.length * round + 1];
  const corner = (row: number, step: number): number => row * round + (step % round);
  const steps = Array.from({ length: round }, (_, step) => step);
  return solidOf(
    [...rings.flat(), bottom, top],
    steps.flatMap((step) => [
      [under, corner(0, step + 1), corner(0, step)],
      ...rings
        .slice(1)
        .map((_, row) => [corner(row, step), corner(row, step + 1), corner(row + 1, step + 1), corner(row + 1, step)]),
      [corner(last, step), corner(last, step + 1), over],
    ]),
  );
}
