import type { Finding } from '$lib/solution/findings/finding.ts';
import { plainFindingText } from '$lib/solution/findings/findingText.ts';

/** A finding with what is said of it, in mm. */
export type FindingInWords = Finding & { readonly text: string };

export const inWords = (finding: Finding): FindingInWords => ({ ...finding, text: plainFindingText(finding) });
