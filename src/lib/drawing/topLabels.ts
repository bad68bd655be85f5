import { between, type Point } from '$lib/geometry/point.ts';
import type { Plan } from '$lib/solution/document.ts';
import { deskShape } from '$lib/project/deskShape.ts';
import { sideNames, type Layout } from '$lib/project/project.ts';
import { cornerOf } from './cabinetFrame.ts';
import { fromAbove } from './projection.ts';
import { surfaceLabels } from './surfaceItems.ts';
import type { Item } from './view.ts';

/** Place of the desk's name from its front and left edges, in text sizes: in the corner. */
const INSET: Point = [0.4, -0.75];

/** Names on the things of the room. */
export function roomLabels(layout: Layout): Item[] {
  const [[x, y] = [0, 0]] = deskShape(layout.desk).points;
  return [
    {
      kind: 'label',
      id: 'desk-label',
      subject: 'desk',
      at: [x, y],
      shift: INSET,
      text: 'desk',
      anchor: 'start',
      rank: 2,
    },
    ...surfaceLabels(layout),
  ];
}

/** Left and right, on the middle of each cabinet's top. */
export const cabinetLabels = (plan: Plan): Item[] =>
  sideNames.map((side) => ({
    kind: 'label',
    id: `cabinet-${side}-label`,
    subject: 'cabinet',
    at: fromAbove.flat(between(cornerOf(plan.sides[side], 4), cornerOf(plan.sides[side], 6), 0.5)),
    text: side === 'left' ? 'L' : 'R',
    anchor: 'middle',
  }));
