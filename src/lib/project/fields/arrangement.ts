import type { Range } from '$lib/project/range.ts';

/** How parts lie on their sheets: numbers that a drag writes, and no form asks for. */
export const arrangement = {
  seed: { what: 'a whole number', min: 0, max: 4294967295, unit: '', whole: true, reason: '32 bits' },
  sheet: {
    what: 'a whole number',
    min: 1,
    max: 2000,
    unit: '',
    whole: true,
    reason: 'sheets and offcuts count from 1',
  },
  place: {
    what: 'a position',
    min: -5000,
    max: 10000,
    unit: 'mm',
    reason: 'a turned part’s origin may lie off the largest sheet',
  },
} as const satisfies Record<string, Range & { readonly reason: string }>;
