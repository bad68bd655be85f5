import { findingText } from '$lib/solution/findings/findingText.ts';
import type { FindingCode } from '$lib/solution/findings/finding.ts';
import { wholeFindings } from '$lib/solution/findings/whole.ts';
import { list, type Section } from './block.ts';
import type { Subject } from './subject.ts';

/** What is said of the making of stands, and of what happens to those who stand them on a desk. */
const codes: ReadonlySet<FindingCode> = new Set([
  'cut-by-hand',
  'falls-over',
  'tips',
  'may-tip',
  'slides',
  'stand-slides',
  'idle-mat',
  'into-wall',
  'close-to-wall',
  'stand-over-edge',
  'cabinet-over-edge',
  'monitor-collision',
]);

const words = { fault: 'Fault', caution: 'Caution', note: 'Note' } as const;

/** Every fault and caution of making and standing: to be put right, or lived with, before anything is cut. */
export function heed({ plan }: Subject): readonly Section[] {
  const found = wholeFindings(plan.checks).filter(({ code, level }) => codes.has(code) && level !== 'note');
  if (found.length === 0) return [];
  const items = found.map((finding) => `${words[finding.level]}: ${findingText(finding, plan.project.display)}`);
  return [{ id: 'heed', title: 'Before you cut', blocks: [list(items)] }];
}
