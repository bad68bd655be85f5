import type { FindingLevel } from './told.ts';

/** Findings are told worst first. */
export const harm = { fault: 0, caution: 1, note: 2 } as const satisfies Record<FindingLevel, number>;

/** The gravest level among some findings; null where there are none. */
export const gravest = (findings: readonly { readonly level: FindingLevel }[]): FindingLevel | null =>
  findings.reduce<FindingLevel | null>(
    (worst, { level }) => (worst === null || harm[level] < harm[worst] ? level : worst),
    null,
  );
