import type { Point, Vec3 } from '$lib/geometry/point.ts';
import type { Plan } from '$lib/solution/document.ts';
import { sideNames } from '$lib/project/project.ts';
import { ellipse, smoothThrough } from './curve.ts';
import { fromAbove, fromRight } from './projection.ts';
import type { Item, Outline } from './view.ts';

/** The head breadth that the knots below are drawn for, mm; other heads are scaled. */
export const DRAWN_BREADTH = 152;
/** Half the length of a head of that breadth, and how far its middle lies behind the ears. mm. */
export const HALF_LENGTH = 97;

/**
 * A profile that looks to the right, the ear at the origin, mm: from the nape over the crown to the throat. A plain shape of
 * our own; the crown lies 140 mm over the ear (ANSUR II, first row of the men's file: sitting height less ear height).
 */
const PROFILE: readonly Point[] = [
  [-58, -168],
  [-60, -120],
  [-80, -72],
  [-99, -18],
  [-103, 40],
  [-84, 98],
  [-42, 131],
  [5, 140],
  [52, 129],
  [84, 96],
  [95, 52],
  [93, 22],
  [104, -2],
  [118, -26],
  [101, -38],
  [101, -70],
  [97, -98],
  [80, -116],
  [46, -108],
  [26, -122],
  [24, -168],
];

/** The nose from above, the head's middle at the origin. */
const NOSE: readonly Point[] = [
  [-14, 94],
  [-9, 108],
  [0, 116],
  [9, 108],
  [14, 94],
];

const placed = (points: readonly Point[], [x, y]: Point, size: number): Point[] =>
  points.map(([a, b]) => [x + size * a, y + size * b]);

const shape = (id: string, points: readonly Point[], rest: Partial<Outline> = {}): Item => ({
  kind: 'outline',
  id,
  subject: 'head',
  pen: 'wide',
  points,
  closed: true,
  filled: true,
  ...rest,
});

const breadthOf = ({ left, right }: Record<'left' | 'right', Vec3>): number => Math.abs(right.x - left.x);

/** The head from above: an oval with a nose towards the desk, and the ears, each marked at its own place. */
export function headFromAbove(plan: Plan): Item[] {
  const size = breadthOf(plan.ears) / DRAWN_BREADTH;
  const centre = fromAbove.flat(plan.head);
  return [
    ...sideNames.map((name) => shape(`ear-${name}`, ellipse(fromAbove.flat(plan.ears[name]), 9 * size, 17 * size, 24))),
    shape('nose', placed(smoothThrough(NOSE), centre, size), { closed: false }),
    shape('head', ellipse(centre, (DRAWN_BREADTH / 2) * size, HALF_LENGTH * size)),
    { kind: 'spot', id: 'head-middle', subject: 'head', at: centre, mark: 'cross' },
    ...sideNames.map((name): Item => ({
      kind: 'spot',
      id: `ear-${name}-spot`,
      subject: 'head',
      at: fromAbove.flat(plan.ears[name]),
      mark: 'dot',
    })),
  ];
}

/** The head from the side, looking at the desk. */
export function headFromSide(plan: Plan): Item[] {
  const size = breadthOf(plan.ears) / DRAWN_BREADTH;
  const centre = fromRight.flat(plan.head);
  return [
    shape('head', placed(smoothThrough(PROFILE), centre, size), { closed: false }),
    shape('ear', placed(ellipse([-4, 4], 15, 27, 24), centre, size), { pen: 'narrow', filled: false }),
    { kind: 'spot', id: 'ear-spot', subject: 'head', at: centre, mark: 'dot' },
  ];
}

const THIN: Partial<Outline> = { pen: 'narrow', filled: false };

/** Another head from above, as thin lines. */
export function headOutlineFromAbove(plan: Plan, head: Vec3): Item[] {
  const size = breadthOf(plan.ears) / DRAWN_BREADTH;
  const centre = fromAbove.flat(head);
  return [
    shape('nose', placed(smoothThrough(NOSE), centre, size), { ...THIN, closed: false }),
    shape('head', ellipse(centre, (DRAWN_BREADTH / 2) * size, HALF_LENGTH * size), THIN),
    { kind: 'spot', id: 'head-middle', subject: 'head', at: centre, mark: 'dot' },
  ];
}

/** The same from the side. */
export function headOutlineFromSide(plan: Plan, head: Vec3): Item[] {
  const size = breadthOf(plan.ears) / DRAWN_BREADTH;
  const centre = fromRight.flat(head);
  return [
    shape('head', placed(smoothThrough(PROFILE), centre, size), { ...THIN, closed: false }),
    { kind: 'spot', id: 'ear-spot', subject: 'head', at: centre, mark: 'dot' },
  ];
}
