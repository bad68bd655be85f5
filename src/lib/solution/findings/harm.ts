import type { FindingLevel } from './told.ts';

/** Findings are told worst first. */
export const harm = { fault: 0, caution: 1, note: 2 } as const satisfies Record<FindingLevel, number>;
