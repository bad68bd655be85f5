import { pointerTo } from '$lib/project/fault.ts';
import type { Edit } from './edit.ts';
import { valueAt } from './pointer.ts';

const PLACEMENT = /^(\/layouts\/\d+\/placement)\/(left|right)\/(x|y)$/;

/** The edit of the other mark that keeps the pair mirrored; none for anything but a number of a mark. */
export function mirrorEdit([pointer, value]: Edit): readonly Edit[] {
  const [, placement, side, axis] = PLACEMENT.exec(pointer) ?? [];
  if (placement === undefined || typeof value !== 'number') return [];
  return [[`${placement}/${side === 'left' ? 'right' : 'left'}/${axis}`, axis === 'x' ? opposite(value) : value]];
}

/** Edits that put the left mark where the right one's mirror image is. */
export function mirrorLeft(document: unknown, layoutIndex: number): readonly Edit[] {
  return ['x', 'y'].flatMap((axis) => {
    const pointer = pointerTo('layouts', layoutIndex, 'placement', 'right', axis);
    return mirrorEdit([pointer, valueAt(document, pointer)]);
  });
}

/** Without a negative zero, which no file can hold. */
const opposite = (value: number): number => (value === 0 ? 0 : -value);
