import type { Point } from '$lib/geometry/point.ts';
import { deskShape } from '$lib/project/deskShape.ts';
import type { Layout } from '$lib/project/project.ts';
import { towards, wayTo } from '$lib/project/wall.ts';
import { rectangle } from './box.ts';
import { WALL_THICKNESS, wallsDrawn } from './roomFromAbove.ts';
import { surfacesFromSide } from './surfaceItems.ts';
import { screenFromSide } from './screenOutline.ts';
import type { Item, Outline } from './view.ts';

/**
 * Whether the floor is drawn at its true distance, or close under the desk with the legs broken off, as long plain things
 * are shortened on a drawing (ISO 128-3, interrupted views). The dimensions say the true height either way.
 */
export type Floor = 'true' | 'broken';

/** Where the floor is drawn under the desk's top when the legs are broken, mm. */
const BROKEN_FLOOR = 190;
/** Thickness of the desk's top as drawn, width of a leg and its distance from the edge, mm: hints, not measures. */
export const TOP = 25;
const LEG = 50;
const LEG_INSET = 30;
/** Half the height of the gap that breaks a leg, and the amplitude of its zigzag, mm. */
const BREAK_GAP = 12;
const ZIGZAG = 9;
const FLOOR_THICKNESS = 36;

/** z of the floor in the view, mm. */
export const floorLevel = ({ desk }: Layout, floor: Floor): number =>
  floor === 'true' ? -desk.height : -Math.min(desk.height, BROKEN_FLOOR);

const line = (id: string, points: readonly Point[], rest: Partial<Outline> = {}): Item => ({
  kind: 'outline',
  id,
  subject: 'desk',
  pen: 'narrow',
  points,
  closed: false,
  filled: false,
  ...rest,
});

function leg(id: string, left: number, bottom: number, broken: boolean): Item[] {
  const right = left + LEG;
  const side = (x: number, from: number, to: number): readonly Point[] => [
    [x, from],
    [x, to],
  ];
  if (!broken) return [left, right].map((x, index) => line(`${id}-${index}`, side(x, bottom, -TOP)));
  const middle = (bottom - TOP) / 2;
  return [left, right]
    .flatMap((x, index) => [
      line(`${id}-${index}-foot`, side(x, bottom, middle - BREAK_GAP)),
      line(`${id}-${index}-top`, side(x, middle + BREAK_GAP, -TOP)),
    ])
    .concat(
      [-BREAK_GAP, BREAK_GAP].map((offset, index) =>
        line(`${id}-break-${index}`, [
          [left - ZIGZAG, middle + offset],
          [left + LEG * 0.4, middle + offset],
          [left + LEG * 0.45, middle + offset + ZIGZAG],
          [left + LEG * 0.55, middle + offset - ZIGZAG],
          [left + LEG * 0.6, middle + offset],
          [right + ZIGZAG, middle + offset],
        ]),
      ),
    );
}

/** A wall that the middle plane of the desk meets, before or behind it. */
interface Met {
  readonly index: number;
  /** Where it meets the plane, along the desk's depth, mm; and 1 where that is behind the desk, −1 behind the chair. */
  readonly face: number;
  readonly out: 1 | -1;
}

/** The walls that the side view cuts. */
export const wallsCut = (layout: Layout): readonly Met[] =>
  wallsDrawn(layout).flatMap(({ wall, index }): Met[] => {
    const way = wayTo(wall);
    if (way === 'left' || way === 'right') return [];
    return [{ index, face: wall.distance / towards(wall.bearing)[1], out: way === 'back' ? 1 : -1 }];
  });

/** Desk, legs, floor and walls from the side. `span`: from where to where the floor is drawn; `top`: how high the walls. */
export function roomFromSide(layout: Layout, floor: Floor, span: readonly [number, number], top: number): Item[] {
  const { depth } = deskShape(layout.desk);
  const ground = floorLevel(layout, floor);
  const broken = ground > -layout.desk.height;
  const cut = wallsCut(layout);
  const [behind, before] = ([1, -1] as const).map((way) => cut.filter(({ out }) => out === way));
  const start = Math.min(...(before ?? []).map(({ face }) => face), before?.length ? Infinity : span[0]);
  const end = Math.max(...(behind ?? []).map(({ face }) => face), behind?.length ? -Infinity : span[1]);
  const [from, to] = [start - (before?.length ? WALL_THICKNESS : 0), end + (behind?.length ? WALL_THICKNESS : 0)];
  return [
    line('floor', rectangle([from, ground - FLOOR_THICKNESS, to, ground]), {
      subject: 'wall',
      closed: true,
      filled: true,
      hatched: true,
    }),
    ...cut.flatMap(({ index, face, out }) => [
      line(
        `wall-${index}`,
        rectangle([
          Math.min(face, face + out * WALL_THICKNESS),
          ground,
          Math.max(face, face + out * WALL_THICKNESS),
          top,
        ]),
        {
          subject: 'wall',
          closed: true,
          filled: true,
          hatched: true,
        },
      ),
      line(
        `wall-face-${index}`,
        [
          [face, ground],
          [face, top],
        ],
        { subject: 'wall', pen: 'wide' },
      ),
    ]),
    line(
      'floor-face',
      [
        [start, ground],
        [end, ground],
      ],
      { subject: 'wall', pen: 'wide' },
    ),
    ...leg('leg-front', LEG_INSET, ground, broken),
    ...leg('leg-rear', depth - LEG_INSET - LEG, ground, broken),
    line('desk', rectangle([0, -TOP, depth, 0]), { pen: 'wide', closed: true, filled: true }),
    ...surfacesFromSide(layout, ground),
    ...layout.monitors.map((monitor, index) =>
      line(`monitor-${index}`, screenFromSide(monitor), {
        subject: 'monitor',
        pen: 'phantom',
        closed: true,
        filled: true,
      }),
    ),
  ];
}
