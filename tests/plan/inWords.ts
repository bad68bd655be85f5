import type { Finding } from '$lib/plan/findings/finding.ts';
import { plainFindingText } from '$lib/plan/findings/findingText.ts';

/** A finding with what is said of it, in mm. */
export type FindingInWords = Finding & { readonly text: string };

export const inWords = (finding: Finding): FindingInWords => ({ ...finding, text: plainFindingText(finding) });
