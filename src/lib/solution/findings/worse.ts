import type { Finding } from './finding.ts';
import type { QuantityUnit } from '$lib/project/sentence.ts';
import type { FindingCode } from './finding.ts';
import { harm } from './harm.ts';

/**
 * By how much a finding may get worse for the sake of another before that counts, in its own unit: less than anybody
 * measures or hears. Rule of thumb. What is a fault may not get worse at all.
 */
const LITTLE: Readonly<Partial<Record<QuantityUnit, number>>> = { mm: 1, '°': 0.5, dB: 0.5, µs: 10, '%': 0.5 };

/** Left of a sum by rounding. */
const DUST = 1e-9;

/** The same for findings of one kind about one thing. */
const kindOf = ({ code, sides, subject }: Finding): string => JSON.stringify([code, sides, subject]);

/** How far a finding is past its limit, in its own unit. */
export const beyond = ({ value, limit }: Pick<Finding, 'value' | 'limit'>): number => Math.abs(value - limit);

/** What is said of one kind before or after: how often, how gravely, and how far past its limit at the worst. */
interface Said {
  readonly count: number;
  readonly grave: number;
  readonly beyond: number;
}

const NOTHING: Said = { count: 0, grave: harm.note + 1, beyond: 0 };

function saidOf(findings: readonly Finding[]): Map<string, Said> {
  const said = new Map<string, Said>();
  for (const finding of findings) {
    const before = said.get(kindOf(finding)) ?? NOTHING;
    said.set(kindOf(finding), {
      count: before.count + 1,
      grave: Math.min(before.grave, harm[finding.level]),
      beyond: Math.max(before.beyond, beyond(finding)),
    });
  }
  return said;
}

/** Whether anything but the findings of a code is worse after than before: a new fault, or by value, by more than a little. */
export function anyWorse(before: readonly Finding[], after: readonly Finding[], code: FindingCode): boolean {
  const others = (findings: readonly Finding[]) => findings.filter((finding) => finding.code !== code);
  const was = saidOf(others(before));
  return (
    others(after).some((finding) => {
      const then = was.get(kindOf(finding)) ?? NOTHING;
      const little = finding.level === 'fault' ? 0 : (LITTLE[finding.unit] ?? 0);
      return beyond(finding) > then.beyond + little + DUST;
    }) ||
    [...saidOf(others(after))].some(
      ([kind, now]) => now.grave === harm.fault && now.count > (was.get(kind)?.count ?? 0),
    )
  );
}
