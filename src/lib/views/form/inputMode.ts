import type { Range } from '$lib/project/range.ts';

/**
 * The keys that a phone offers for a number: figures and a point where that is all it takes; all of them where it may have a
 * sign, or is in inches, which are typed as fractions.
 */
export const inputModeOf = ({ min, unit }: Pick<Range, 'min' | 'unit'>): 'decimal' | 'text' =>
  min < 0 || unit === 'in' ? 'text' : 'decimal';
