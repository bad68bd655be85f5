import type { Extent } from '$lib/geometry/extent.ts';
import type { Point } from '$lib/geometry/point.ts';
import { deskShape } from '$lib/project/deskShape.ts';
import type { Layout, Wall } from '$lib/project/project.ts';
import { gapToWall, reachOf, towards } from '$lib/project/wall.ts';
import { rectangle } from './box.ts';
import { surfacesFromAbove } from './surfaceItems.ts';
import { screenFromAbove } from './screenOutline.ts';
import type { Item } from './view.ts';

/** How thick the wall is drawn, mm: enough to show its hatching. */
export const WALL_THICKNESS = 60;
/** Side of the square that hints at a leg, and its distance from the desk's edges, mm. */
const LEG = 50;
const LEG_INSET = 30;

function legs({ left, bottom, right, top }: Extent): Item[] {
  const across = [left + LEG_INSET, right - LEG_INSET - LEG];
  const up = [bottom + LEG_INSET, top - LEG_INSET - LEG];
  return across.flatMap((x, column) =>
    up.map((y, row): Item => ({
      kind: 'outline',
      id: `leg-${column}-${row}`,
      subject: 'desk',
      pen: 'hidden',
      points: rectangle([x, y, x + LEG, y + LEG]),
      closed: true,
      filled: false,
      rank: 4,
    })),
  );
}

/** A wall as far as the desk reaches along it. */
function wallItems(wall: Wall, index: number, points: readonly Point[]): Item[] {
  const common = { kind: 'outline', subject: 'wall' } as const;
  const [from, to] = wallLine(wall, points);
  const [outX, outY] = towards(wall.bearing);
  const behind = ([x, y]: Point): Point => [x + outX * WALL_THICKNESS, y + outY * WALL_THICKNESS];
  return [
    {
      ...common,
      id: `wall-${index}`,
      pen: 'narrow',
      points: [from, to, behind(to), behind(from)],
      closed: true,
      filled: true,
      hatched: true,
    },
    { ...common, id: `wall-face-${index}`, pen: 'wide', points: [from, to], closed: false, filled: false },
  ];
}

/** From the desk and the head to a wall that is no longer drawn, mm: it would take the drawing its scale. */
const FAR = 1500;

/** A wall, and its place in the list. */
interface Listed {
  readonly wall: Wall;
  readonly index: number;
}

/** The walls near enough to be drawn. */
export function wallsDrawn({ desk, room, listener }: Layout): readonly Listed[] {
  const near = [...deskShape(desk).points, [listener.offset, -listener.setback] as const];
  return room.walls.flatMap((wall, index) => (gapToWall(wall, near) <= FAR ? [{ wall, index }] : []));
}

/** The two ends of a wall as far as something reaches along it, the left one as seen facing it first. */
export function wallLine({ bearing, distance }: Wall, points: readonly Point[]): readonly [Point, Point] {
  const [outX, outY] = towards(bearing);
  const along: Point = [outY, 0 - outX];
  const at = (reach: number): Point => [outX * distance + along[0] * reach, outY * distance + along[1] * reach];
  return [at(0 - reachOf([0 - along[0], 0 - along[1]], points)), at(reachOf(along, points))];
}

const monitors = (layout: Layout): Item[] =>
  layout.monitors.map((monitor, index) => ({
    kind: 'outline',
    id: `monitor-${index}`,
    subject: 'monitor',
    pen: 'wide',
    points: screenFromAbove(monitor),
    closed: true,
    filled: true,
  }));

/** Walls, desk with its middle line, monitors and surfaces, from above. */
export function roomFromAbove(layout: Layout): Item[] {
  const { points, extent, depth } = deskShape(layout.desk);
  const common = { kind: 'outline', subject: 'desk' } as const;
  return [
    ...wallsDrawn(layout).flatMap(({ wall, index }) => wallItems(wall, index, points)),
    ...surfacesFromAbove(layout, 'under the desk'),
    {
      ...common,
      id: 'desk',
      pen: 'wide',
      points,
      closed: true,
      filled: true,
    },
    ...legs(extent),
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
    ...surfacesFromAbove(layout, 'over it'),
  ];
}
