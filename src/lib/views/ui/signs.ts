import { levelSigns } from '$lib/drawing/dimensionText.ts';

/** The sign of each level, so that colour is only a help; all is well; and the checks are still at work. */
export const signs = { ...levelSigns, note: '○', good: '✓', waiting: '…' } as const;
