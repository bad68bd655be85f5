import type { Finding } from './finding.ts';
import { plainFindingText } from './findingText.ts';
import { sources } from './sources.ts';
import { merged } from './whole.ts';

/** Findings as the plan document has them: each of all the loudspeakers that it holds for, with its source and its sentence in words. */
export const findingDocuments = (findings: readonly Finding[]) => merged(findings).map(findingDocument);

/** A finding with its quantities by name, in mm, degrees and the units that they name, none of them rounded. */
const findingDocument = (finding: Finding) => {
  const { code, level, sides, subject, facts, quantities, value, limit, unit, source } = finding;
  return {
    code,
    level,
    sides,
    subject,
    facts,
    quantities: Object.fromEntries(
      Object.entries(quantities).map(([name, { value: is, unit: of }]) => [name, { value: is, unit: of }]),
    ),
    value,
    limit,
    unit,
    source: sources[source],
    text: plainFindingText(finding),
  };
};
