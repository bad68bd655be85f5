import type { Ask } from './ask.ts';
import { mirrored, type Edit } from './input.ts';

/**
 * What makes a candidate of a layout: its numbers are the digits of its index in a system of as many as each number has
 * values, the first one running fastest.
 */
export function editsAt({ free }: Pick<Ask, 'free'>, index: number): Edit[] {
  let rest = index;
  return free.flatMap(({ pointer, from, step, count, mirror }) => {
    const digit = rest % count;
    rest = (rest - digit) / count;
    const edit = { pointer, value: from + digit * step };
    const other = mirror ? mirrored(edit) : null;
    return other ? [edit, other] : [edit];
  });
}
