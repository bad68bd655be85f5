import { markingChecks, markingOut } from '$lib/solution/markingOut.ts';
import { table, text, type Section } from './block.ts';
import { DESK, FLOOR, surfaceCalled } from '$lib/project/surface.ts';
import { deskShape } from '$lib/project/deskShape.ts';
import { sideNames } from '$lib/project/project.ts';
import type { Plan } from '$lib/solution/document.ts';
import { lengthsOf, type Subject } from './subject.ts';

/** The two lines of a desk. */
const CENTRE = {
  straight: 'Mark the centre line square to the desk’s front edge, with a soft pencil or tape.',
  other:
    'Lay a straight batten across the desk through the point of the front edge before the seat, as the front edge runs there: lengths “from the front edge” are from that line. Mark the centre line square to it, with a soft pencil or tape.',
};

const FLOOR_LINES =
  'Hang a plumb line from the desk’s front edge, at both ends and at its centre line, and lay tape on the floor along the points that it finds: lengths are from those lines.';

/** How the cabinets go on their stands, where that is not upright. */
const LIES = {
  upright: '',
  'tweeter-inboard': 'The cabinets lie on their side, what was their top towards each other. ',
  'tweeter-outboard': 'The cabinets lie on their side, what was their top away from each other. ',
} as const;

/** Where each stand’s corners go. */
export function onTheDesk({ plan }: Subject): Section {
  const { bare, full, unit } = lengthsOf(plan.project);
  const { between, diagonals } = markingChecks(plan);
  const marked = markingOut(plan);
  const carriers = [...new Set(marked.map(({ on }) => on))];
  const diagonalText = `diagonals of the left base ${diagonals.left.map(full).join(' and ')}, of the right one ${diagonals.right.map(full).join(' and ')}.`;
  const check = `Check: ${carriers.length > 1 ? '' : `${full(between)} between the inner front corners of the two bases; `}${diagonalText}`;
  return {
    id: 'on-the-desk',
    title: 'Marking out',
    blocks: [
      text(
        `${LIES[plan.project.speaker.lying]}Left and right are yours as you sit at the desk. The corners are those of the base itself, not of its feet.`,
      ),
      ...carriers.flatMap((on, index) => [
        text(linesOn(on, plan)),
        table(
          `Corners on ${on === DESK || on === FLOOR ? `the ${on}` : surfaceCalled(on)}, ${unit}`,
          ['Corner', 'from the front edge', 'from the centre line'],
          marked
            .filter((one) => one.on === on)
            .map(({ side, corner, fromEdge, fromCentre, hand }) => [
              `${side} stand, ${corner}`,
              bare(fromEdge),
              `${bare(fromCentre)} ${hand === 'on' ? '' : hand}`.trim(),
            ]),
          ...(index === carriers.length - 1 ? [check] : []),
        ),
      ]),
    ],
  };
}

/** How the two lines come about that a tape is laid from. */
function linesOn(on: string, plan: Plan): string {
  if (on === FLOOR) return FLOOR_LINES;
  if (on === DESK) return CENTRE[frontReaches(plan) ? 'straight' : 'other'];
  return `Mark the centre line of ${surfaceCalled(on)}, square to its front edge from the middle of that edge.`;
}

/** Whether the desk’s front edge runs straight past every corner of the stands: a tape square to it reaches them all. */
function frontReaches({ layout, stand }: Plan): boolean {
  const { points } = deskShape(layout.desk);
  const corners = sideNames
    .filter((side) => layout.placement[side].on === DESK)
    .flatMap((side) => stand[side].footprint.map(([x]) => x));
  return points.some(([from, y], index) => {
    const [to, end] = points[(index + 1) % points.length] ?? [from, y];
    return y === 0 && end === 0 && from <= Math.min(0, ...corners) && to >= Math.max(0, ...corners);
  });
}
