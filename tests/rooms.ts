import type { Desk, Wall } from '$lib/project/project.ts';

/** A plain room round a desk: what is left out is not there, and sends everything back. */
export interface PlainRoom {
  /** Between the desk's back edge and the wall behind it, mm; null: no wall. */
  readonly gap?: number | null;
  /** The desk's depth, mm. */
  readonly depth?: number;
  /** From the middle, mm. */
  readonly left?: number;
  readonly right?: number;
  /** Over the floor, mm. */
  readonly ceiling?: number;
  /** Share of the energy that each keeps. */
  readonly absorbs?: {
    readonly desk?: number;
    readonly wall?: number;
    readonly sides?: number;
    readonly ceiling?: number;
  };
}

export const wallAt = (name: string, bearing: number, distance: number, absorption = 0): Wall => ({
  name,
  bearing,
  distance,
  absorption,
});

/** The demo's own gap behind its desk, and that desk's depth, mm. */
const [GAP, DEPTH] = [120, 700];

/** Changes of the demo that put its desk into such a room. */
export const inRoom = ({ gap = GAP, depth = DEPTH, left, right, ceiling, absorbs = {} }: PlainRoom) => ({
  '/layouts/0/desk/absorption': absorbs.desk ?? 0,
  '/layouts/0/room': {
    walls: [
      ...(gap === null ? [] : [wallAt('behind', 0, depth + gap, absorbs.wall)]),
      ...(left === undefined ? [] : [wallAt('left', -90, left, absorbs.sides)]),
      ...(right === undefined ? [] : [wallAt('right', 90, right, absorbs.sides)]),
    ],
    ceiling: ceiling === undefined ? null : { height: ceiling, absorption: absorbs.ceiling ?? 0 },
  },
});

/** A change of the demo: how far the wall stands behind its desk; null takes it away. */
export const withGap = (gap: number | null) => ({
  '/layouts/0/room/walls': gap === null ? [] : [wallAt('behind', 0, DEPTH + gap)],
});

export const rectangularDesk = (width: number, depth: number, height: number): Desk => ({
  height,
  absorption: 0,
  outline: { rule: 'rectangle', width, depth, corner: 0 },
});

/** Width and depth of a desk that is a rectangle, as the demo's is; throws at another. */
export function rectangleOf({ outline }: Desk): { readonly width: number; readonly depth: number } {
  if (outline.rule !== 'rectangle') throw new Error(`expected a rectangle, got ${outline.rule}`);
  return outline;
}
