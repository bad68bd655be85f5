import { plainQuantity, plainText } from '$lib/project/sentence.ts';
import type { Finding } from './finding.ts';

/** Whether two findings say the same, each of its own loudspeakers: to the last digit that is told. */
export const isAlike = (a: Finding, b: Finding): boolean => toldOf(a) === toldOf(b);

/** Everything that goes into its sentence but the loudspeakers. */
const toldOf = ({ code, level, subject, facts, quantities, advice }: Finding): string =>
  JSON.stringify([
    code,
    level,
    subject,
    facts,
    Object.entries(quantities).map(([name, quantity]) => [name, plainQuantity(quantity)]),
    advice ? plainText(advice) : null,
  ]);
