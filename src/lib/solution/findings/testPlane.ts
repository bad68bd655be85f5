import type { Finding, FindingCode } from './finding.ts';

/** The plane on which a loudspeaker must neither tip nor slide, whichever way it is turned, degrees. */
export const TEST_PLANE = 10;

const codes: ReadonlySet<FindingCode> = new Set(['falls-over', 'tips', 'may-tip', 'slides', 'stand-slides']);

/** Whether a finding says that something tips or slides. */
export const isStanding = ({ code }: Pick<Finding, 'code'>): boolean => codes.has(code);
