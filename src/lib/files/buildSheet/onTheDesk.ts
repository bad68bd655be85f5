import { markingChecks, markingOut } from '$lib/solution/markingOut.ts';
import { table, text, type Section } from './block.ts';
import { deskShape } from '$lib/project/deskShape.ts';
import type { Plan } from '$lib/solution/document.ts';
import { lengthsOf, type Subject } from './subject.ts';

/** How the two lines come about that a tape is laid from. */
const CENTRE = {
  straight: 'Mark the centre line square to the desk’s front edge, with a soft pencil or tape.',
  other:
    'Lay a straight batten across the desk through the point of the front edge before the seat, as the front edge runs there: lengths “from the front edge” are from that line. Mark the centre line square to it, with a soft pencil or tape.',
};

/** Where each stand’s corners go. */
export function onTheDesk({ plan }: Subject): Section {
  const { bare, full, unit } = lengthsOf(plan.project);
  const { between, diagonals } = markingChecks(plan);
  const rows = markingOut(plan).map(({ side, corner, fromEdge, fromCentre, hand }) => [
    `${side} stand, ${corner}`,
    bare(fromEdge),
    `${bare(fromCentre)} ${hand === 'on' ? '' : hand}`.trim(),
  ]);
  return {
    id: 'on-the-desk',
    title: 'Marking out the desk',
    blocks: [
      text(
        `${CENTRE[frontReaches(plan) ? 'straight' : 'other']} Left and right are yours as you sit at the desk. The corners are those of the base itself, not of its feet.`,
      ),
      table(
        `Corners on the desk, ${unit}`,
        ['Corner', 'from the front edge', 'from the centre line'],
        rows,
        `Check: ${full(between)} between the inner front corners of the two bases; diagonals of the left base ${diagonals.left.map(full).join(' and ')}, of the right one ${diagonals.right.map(full).join(' and ')}.`,
      ),
    ],
  };
}

/** Whether the desk’s front edge runs straight past every corner of the stands: a tape square to it reaches them all. */
function frontReaches({ layout, stand }: Plan): boolean {
  const { points } = deskShape(layout.desk);
  const corners = [...stand.left.footprint, ...stand.right.footprint].map(([x]) => x);
  return points.some(([from, y], index) => {
    const [to, end] = points[(index + 1) % points.length] ?? [from, y];
    return y === 0 && end === 0 && from <= Math.min(0, ...corners) && to >= Math.max(0, ...corners);
  });
}
