import type { Ask } from './ask.ts';
import { mirrored, type Change } from './input.ts';

/**
 * What makes a candidate of a layout: its numbers and rules are the digits of its index in a system of as many as each has
 * values, the first one running fastest.
 */
export function editsAt({ free }: Pick<Ask, 'free'>, index: number): Change[] {
  return digitsAt({ free }, index).flatMap((digit, place): Change[] => {
    const one = free[place];
    if (!one) return [];
    const { pointer } = one;
    if (one.rules) return one.rules.slice(digit, digit + 1).map((value) => ({ pointer, value }));
    const edit = { pointer, value: one.from + digit * one.step };
    const other = one.mirror ? mirrored(edit) : null;
    return other ? [edit, other] : [edit];
  });
}

/** Which of its values each free number or rule has, from 0. */
export function digitsAt({ free }: Pick<Ask, 'free'>, index: number): number[] {
  let rest = index;
  return free.map(({ count }) => {
    const digit = rest % count;
    rest = (rest - digit) / count;
    return digit;
  });
}
