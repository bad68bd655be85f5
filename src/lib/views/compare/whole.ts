import type { Comparison } from '$lib/study/compare.ts';

/** A comparison with the measures of another one of the same layouts. */
export const withMeasuresOf = (one: Comparison, more: Comparison): Comparison => ({
  ...one,
  layouts: one.layouts.map((layout, index) => ({
    ...layout,
    values: { ...layout.values, ...more.layouts[index]?.values },
  })),
  best: { ...one.best, ...more.best },
  worst: { ...one.worst, ...more.worst },
});
