import type { Finding } from '$lib/solution/findings/finding.ts';
import { countText } from '$lib/views/ui/formatNumber.ts';
import type { signs } from '$lib/views/ui/signs.ts';

/** What the checks come to, in two words. @param findings none twice; null while they are awaited. */
export function summaryOf(
  hasPlan: boolean,
  findings: readonly Pick<Finding, 'level'>[] | null,
): { readonly level: keyof typeof signs; readonly text: string } {
  if (!hasPlan) return { level: 'fault', text: 'no answer' };
  if (findings === null) return { level: 'waiting', text: 'being checked' };
  const count = (level: Finding['level']): number => findings.filter((finding) => finding.level === level).length;
  if (count('fault') > 0) return { level: 'fault', text: countText(count('fault'), 'fault', 'faults') };
  if (count('caution') > 0) return { level: 'caution', text: countText(count('caution'), 'caution', 'cautions') };
  return { level: 'good', text: 'no caution' };
}
