import type { SideName } from '$lib/project/project.ts';
import { sideNames } from '$lib/project/project.ts';
import { placeOn } from '$lib/project/surface.ts';
import type { Plan } from './document.ts';

/** Where a corner of a stand’s base goes on what it stands on, mm. */
export interface MarkedCorner {
  readonly side: SideName;
  /** The desk, the floor, or the name of a surface. */
  readonly on: string;
  /** As the listener sees it: `front right`. */
  readonly corner: string;
  /** From the front edge of the desk or the surface, square to it; negative in front of it. On the floor: of the desk. */
  readonly fromEdge: number;
  /** From the centre line of the same, square to it, and on which side of it; `on` for none. */
  readonly fromCentre: number;
  readonly hand: 'left' | 'right' | 'on';
}

/** The order of a footprint’s corners. */
const corners = ['front right', 'rear right', 'rear left', 'front left'] as const;

/** Nearer to the centre line than this, mm, is on it: no pencil parts the two. */
const ON_LINE = 1e-6;

/** What to mark out: each stand’s corners from two lines, of what it stands on, that a tape and a square find. */
export const markingOut = ({ layout, stand }: Pick<Plan, 'layout' | 'stand'>): readonly MarkedCorner[] =>
  sideNames.flatMap((side) => {
    const { on } = layout.placement[side];
    return stand[side].footprint.map((point, i) => {
      const [across, back] = placeOn(layout, side, point);
      return {
        side,
        on,
        corner: corners[i] ?? `corner ${i + 1}`,
        fromEdge: back,
        fromCentre: Math.abs(across),
        hand: Math.abs(across) <= ON_LINE ? 'on' : across < 0 ? 'left' : 'right',
      };
    });
  });

/** To check by: the diagonals of each base, and the gap between the two stands’ nearest front corners, mm. */
export function markingChecks({ stand }: Pick<Plan, 'stand'>): {
  readonly diagonals: Readonly<Record<SideName, readonly [number, number]>>;
  readonly between: number;
} {
  const span = (side: SideName, a: number, b: number): number => {
    const [from, to] = [stand[side].footprint[a], stand[side].footprint[b]];
    return from && to ? Math.hypot(to[0] - from[0], to[1] - from[1]) : 0;
  };
  const diagonals = (side: SideName) => [span(side, 0, 2), span(side, 1, 3)] as const;
  const [left, right] = [stand.left.footprint[0], stand.right.footprint[3]];
  return {
    diagonals: { left: diagonals('left'), right: diagonals('right') },
    between: left && right ? Math.hypot(right[0] - left[0], right[1] - left[1]) : 0,
  };
}
