/** The sign of each level, so that colour is only a help; all is well; and the checks are still at work. */
export const signs = { fault: '✕', caution: '▲', note: '○', good: '✓', waiting: '…' } as const;
