import { around } from '$lib/geometry/extent.ts';
import { noFit, clearRight } from '$lib/workshop/nesting/noFit.ts';
import type { Point } from '$lib/geometry/point.ts';

interface Box {
  readonly width: number;
  readonly height: number;
  readonly copies: number;
}
type Room = Omit<Box, 'copies'>;

/**
 * What simple means reach: a part and its half-turned twin side by side make a box, and boxes of twins and of single parts
 * stand in rows, the strips beside and above them filled in turn. `corners`: convex, counter-clockwise.
 */
export function pairBoxes(corners: readonly Point[], room: Room, spacing: number, quarterTurns: boolean): number {
  const upright = boxesOf(corners, spacing);
  const turned = upright.map(({ width, height, copies }) => ({ width: height, height: width, copies }));
  return packed(quarterTurns ? [...upright, ...turned] : upright, room, spacing, 2);
}

/** A single part, twins side by side, and twins one above the other. */
function boxesOf(corners: readonly Point[], spacing: number): Box[] {
  const { right: width, top: height } = around(corners);
  const half = corners.map(([x, y]): Point => [width - x, height - y]);
  const swap = (points: readonly Point[]): Point[] => points.map(([x, y]): Point => [y, x]).reverse();
  const nearest = (a: readonly Point[], b: readonly Point[]): number =>
    Math.min(clearRight(noFit(a, b), 0, spacing), clearRight(noFit(b, a), 0, spacing));
  return [
    { width, height, copies: 1 },
    { width: width + nearest(corners, half), height, copies: 2 },
    { width, height: height + nearest(swap(corners), swap(half)), copies: 2 },
  ];
}

function packed(boxes: readonly Box[], room: Room, spacing: number, depth: number): number {
  let most = 0;
  for (const { width, height, copies } of boxes) {
    const across = Math.floor((room.width + spacing) / (width + spacing));
    const up = Math.floor((room.height + spacing) / (height + spacing));
    if (across < 1 || up < 1) continue;
    const [used, high] = [across * (width + spacing), up * (height + spacing)];
    const beside = { width: room.width - used, height: room.height };
    const above = { width: used - spacing, height: room.height - high };
    const strips = depth > 0 ? [beside, above].map((strip) => packed(boxes, strip, spacing, depth - 1)) : [];
    most = Math.max(
      most,
      strips.reduce((sum, count) => sum + count, copies * across * up),
    );
  }
  return most;
}
