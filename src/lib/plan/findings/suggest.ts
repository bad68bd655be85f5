import { checkProject } from '$lib/project/parse.ts';
import type { Layout, Project } from '$lib/project/project.ts';
import { toTheEnd } from '$lib/project/toTheEnd.ts';
import type { Finding, Plan } from '$lib/plan/document.ts';
import { plan } from '$lib/plan/plan.ts';
import { soundOf } from '$lib/plan/sound.ts';
import type { SoundPlan } from '$lib/plan/soundDocument.ts';
import { heardFindings } from './heard.ts';
import { proposalsFor, type Case, type Proposal } from './proposals.ts';
import { seatFindings } from './seats.ts';
import { changedLayout, editsOf, type LayoutChange, type Suggestion } from './suggestion.ts';
import { harm } from './harm.ts';

/** A suggestion must take off at least this share of how far a finding is from its limit. */
const WORTH = 0.5;

/** Everything that all checks have to say of a plan: geometry, standing, sound and seats. */
export const allFindings = (project: Project, layout: Layout, of: Plan, sound: SoundPlan): Finding[] => [
  ...of.findings,
  ...heardFindings(sound),
  ...seatFindings(project, layout, of),
];

/**
 * One suggestion for each code among the findings for which a good one is known. Every one has been tried: the project
 * with its edits is sound, is planned anew, and there the code's findings are gone, or less grave, or at most half as far
 * from their limits, with no more faults, cautions or, against a note, notes than before.
 */
export const suggestionsFor = (...asked: Parameters<typeof suggestionSteps>): Map<string, Suggestion> =>
  toTheEnd(suggestionSteps(...asked));

/** The same in steps, one for each code: each yields the share that is done, 0…1. */
export function* suggestionSteps(
  project: Project,
  index: number,
  of: Plan,
  sound: SoundPlan,
  findings: readonly Finding[],
): Generator<number, Map<string, Suggestion>> {
  const layout = project.layouts[index];
  const found = new Map<string, Suggestion>();
  if (!layout) return found;
  const at = (change: LayoutChange): Plan | null => planOf(project, changedLayout(layout, change));
  const codes = new Set(findings.map((finding) => finding.code));
  let tried = 0;
  for (const code of codes) {
    const own = findings.filter((finding) => finding.code === code);
    const suggestion = bestOf({ project, layout, plan: of, sound, findings: own, at }, code, index, findings);
    if (suggestion) found.set(code, suggestion);
    tried += 1;
    yield tried / codes.size;
  }
  return found;
}

function planOf(project: Project, layout: Layout): Plan | null {
  const outcome = plan(project, layout);
  return outcome.ok ? outcome.value : null;
}

/** The first proposal that leaves nothing of the finding; else the first that is worth it. */
function bestOf(of: Case, code: string, index: number, before: readonly Finding[]): Suggestion | null {
  let fair: Proposal | null = null;
  for (const proposal of proposalsFor(code, of)) {
    const after = findingsAfter(of, proposal.change, index);
    if (!after || !isBetter(before, after, code)) continue;
    if (!after.some((finding) => finding.code === code)) return suggestionOf(proposal, index);
    fair ??= proposal;
  }
  return fair && suggestionOf(fair, index);
}

const suggestionOf = ({ label, change }: Proposal, index: number): Suggestion => ({
  label,
  edits: editsOf(change, index),
});

function findingsAfter({ project, layout }: Case, change: LayoutChange, index: number): Finding[] | null {
  const checked = checkProject({ ...project, layouts: project.layouts.with(index, changedLayout(layout, change)) });
  const made = checked.ok ? checked.value.layouts[index] : undefined;
  const of = checked.ok && made ? planOf(checked.value, made) : null;
  return checked.ok && made && of ? allFindings(checked.value, made, of, soundOf(checked.value, made, of)) : null;
}

/** Whether a code's findings are better after than before, and nothing else is worse. */
export function isBetter(before: readonly Finding[], after: readonly Finding[], code: string): boolean {
  const own = (findings: readonly Finding[]) => findings.filter((finding) => finding.code === code);
  const worst = Math.min(...own(before).map(({ level }) => harm[level]));
  const others = (findings: readonly Finding[], level: number) =>
    findings.filter((finding) => finding.code !== code && harm[finding.level] === level).length;
  for (let level = 0; level <= worst; level++) if (others(after, level) > others(before, level)) return false;
  const left = own(after);
  if (left.some(({ level }) => harm[level] < worst)) return false;
  return left.every(({ level }) => harm[level] > worst) || beyond(left) <= (1 - WORTH) * beyond(own(before));
}

const beyond = (findings: readonly Finding[]): number =>
  findings.reduce((sum, { value, limit }) => sum + Math.abs(value - limit), 0);
