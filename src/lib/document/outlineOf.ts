import { deskShape } from '$lib/project/deskShape.ts';
import { outlines } from '$lib/project/fields/desk.ts';
import { MOST_CORNERS } from '$lib/project/limits.ts';
import { startOf } from '$lib/project/fields/starts.ts';
import type { Desk, DeskOutline } from '$lib/project/project.ts';

/** A desk of another shape, about as large as it is now, in whole millimetres. */
export function outlineOf(rule: string, desk: Desk): DeskOutline {
  const { extent, points } = deskShape(desk);
  const plain = {
    width: Math.max(200, Math.round(extent.right - extent.left)),
    depth: Math.max(100, Math.round(extent.top - extent.bottom)),
  };
  switch (rule) {
    case 'bowed':
      return { rule, ...plain, bow: Math.min(startOf(outlines.bowed).bow, Math.floor(plain.depth / 4)) };
    case 'corner':
      return { rule, ...startOf(outlines.corner) };
    case 'l': {
      const start = startOf(outlines.l.return);
      return { rule, ...plain, return: { ...start, width: Math.min(start.width, Math.floor(plain.width / 2)) } };
    }
    case 'outline':
      return { rule, points: points.slice(0, MOST_CORNERS).map(([x, y]): [number, number, number] => [x, y, 0]) };
    default:
      return { rule: 'rectangle', ...plain, corner: 0 };
  }
}
