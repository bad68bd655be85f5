import type { Point } from '$lib/geometry/point.ts';
import type { Layout } from '$lib/project/project.ts';
import { rectangle } from './box.ts';
import type { Item } from './view.ts';

/** How thick the wall is drawn, mm: enough to show its hatching. */
export const WALL_THICKNESS = 60;
/** Side of the square that hints at a leg, and its distance from the desk's edges, mm. */
const LEG = 50;
const LEG_INSET = 30;

function legs({ width, depth }: Layout['desk']): Item[] {
  const across = [LEG_INSET - width / 2, width / 2 - LEG_INSET - LEG];
  const up = [LEG_INSET, depth - LEG_INSET - LEG];
  return across.flatMap((left, column) =>
    up.map((bottom, row): Item => ({
      kind: 'outline',
      id: `leg-${column}-${row}`,
      subject: 'desk',
      pen: 'hidden',
      points: rectangle([left, bottom, left + LEG, bottom + LEG]),
      closed: true,
      filled: false,
      rank: 4,
    })),
  );
}

function wall({ width, depth, wallGap }: Layout['desk']): Item[] {
  if (wallGap === null) return [];
  const face = depth + wallGap;
  const half = width / 2;
  const line: Point[] = [
    [-half, face],
    [half, face],
  ];
  const common = { kind: 'outline', subject: 'wall' } as const;
  return [
    {
      ...common,
      id: 'wall',
      pen: 'narrow',
      points: rectangle([-half, face, half, face + WALL_THICKNESS]),
      closed: true,
      filled: true,
      hatched: true,
    },
    { ...common, id: 'wall-face', pen: 'wide', points: line, closed: false, filled: false },
  ];
}

const monitors = (layout: Layout): Item[] =>
  layout.monitors.map(({ x, y, width, depth }, index) => ({
    kind: 'outline',
    id: `monitor-${index}`,
    subject: 'monitor',
    pen: 'wide',
    points: rectangle([x - width / 2, y, x + width / 2, y + depth]),
    closed: true,
    filled: true,
  }));

/** Wall, desk with its middle line, and monitors, from above. */
export function roomFromAbove(layout: Layout): Item[] {
  const { width, depth } = layout.desk;
  const common = { kind: 'outline', subject: 'desk' } as const;
  return [
    ...wall(layout.desk),
    {
      ...common,
      id: 'desk',
      pen: 'wide',
      points: rectangle([-width / 2, 0, width / 2, depth]),
      closed: true,
      filled: true,
    },
    ...legs(layout.desk),
    {
      ...common,
      id: 'desk-middle',
      pen: 'centre',
      points: [
        [0, -layout.listener.setback],
        [0, depth],
      ],
      closed: false,
      filled: false,
    },
    ...monitors(layout),
  ];
}
