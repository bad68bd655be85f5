import { seen, type Room, type Row } from './rows.ts';
import type { Spot } from './rows.ts';

/** Copies in a room and the rooms that stay empty, both in the room's own frame. */
export interface Filled {
  readonly spots: readonly Spot[];
  readonly free: readonly Strip[];
}

/** A part of a larger room. */
export interface Strip extends Room {
  readonly x: number;
  readonly y: number;
}

interface Place {
  readonly x: number;
  readonly y: number;
}

/** Things of a strip in the frame of the room that holds the strip. */
export const moved = <Thing extends Place>(things: readonly Thing[], { x, y }: Place): Thing[] =>
  things.map((thing) => ({ ...thing, x: thing.x + x, y: thing.y + y }));

/** What some rows leave of a room: twice, as the corner can go with the strip beside them or with the one above. */
export function stripsOf(row: Row, count: number, room: Room, spacing: number): Strip[][] {
  const { width, height } = seen(row.view, room);
  const used = count * (row.height + spacing) - spacing;
  const beside = { x: row.width + spacing, y: 0, width: width - row.width - spacing };
  const above = { x: 0, y: used + spacing, height: height - used - spacing };
  return [
    [
      { ...beside, height: used },
      { ...above, width },
    ],
    [
      { ...beside, height },
      { ...above, width: row.width },
    ],
  ].map((pair) => pair.map((strip) => (row.view.swapped ? swap(strip) : strip)));
}

/** The split with the largest single strip: the most useful offcut. */
export const largestSplit = (splits: readonly Strip[][]): Strip[] =>
  splits.reduce((best, other) => (largest(other) > largest(best) ? other : best), splits[0] ?? []);

const largest = (strips: readonly Strip[]): number =>
  Math.max(0, ...strips.map(({ width, height }) => Math.max(0, width) * Math.max(0, height)));

export const swap = ({ x, y, width, height }: Strip): Strip => ({ x: y, y: x, width: height, height: width });
