import { posturesServed } from '$lib/layout/ears.ts';
import { checkProject } from '$lib/project/parse.ts';
import type { Layout, Project } from '$lib/project/project.ts';
import { toTheEnd } from '$lib/project/toTheEnd.ts';
import type { Solution } from '$lib/solution/solution.ts';
import type { Outcome } from '$lib/solution/outcome.ts';
import type { Finding, FindingCode, FindingKind } from './finding.ts';
import { heardFindings } from './heard.ts';
import { placedFindings } from './placed.ts';
import { priceOf } from './price.ts';
import { proposalsFor } from './proposals.ts';
import type { Case, Proposal } from './proposal.ts';
import { seatFindings } from './seats.ts';
import { changedLayout, editsOf, type LayoutChange, type TriedSuggestion } from './suggestion.ts';
import { harm } from './harm.ts';
import { anyWorse, beyond } from './worse.ts';

/** A suggestion must take off at least this share of how far a finding is from its limit. */
const WORTH = 0.5;

/** What plans a change anew: `solve`, of which the suggestions are a part themselves. */
type Solve = (project: Project, layout: Layout, advice: boolean) => Outcome<Solution>;

/** Everything that all checks have to say: of geometry, standing, sound and seats; worst first. */
export const allFindings = (of: Solution): Finding[] =>
  [...of.checks, ...heardFindings(of.sound), ...seatFindings(of.project, of.layout, of)].sort(
    (a, b) => harm[a.level] - harm[b.level],
  );

/**
 * One suggestion for each code among the findings for which a good one is known. Every one has been tried: the project
 * with its edits is sound, is planned anew, and there the code's findings are gone, or less grave, or at most half as far
 * from their limits, and nothing else is worse by more than a little.
 */
export const suggestionsFor = (...asked: Parameters<typeof suggestionSteps>): Map<FindingCode, TriedSuggestion> =>
  toTheEnd(suggestionSteps(...asked));

/** The same in steps, one for each code: each yields the share that is done, 0…1. */
export function* suggestionSteps(of: Solution, solve: Solve): Generator<number, Map<FindingCode, TriedSuggestion>> {
  const found = new Map<FindingCode, TriedSuggestion>();
  // Several codes are answered by the same moves.
  const made = new Map<string, Solution | null>();
  const at = (change: LayoutChange): Solution | null => {
    const key = JSON.stringify(change);
    const known = made.get(key);
    if (known !== undefined) return known;
    const found = solutionOf(solve(of.project, changedLayout(of.layout, change), false));
    made.set(key, found);
    return found;
  };
  const placed = (change: LayoutChange) => placedFindings(of.project, changedLayout(of.layout, change));
  const codes = new Set(of.findings.map((finding) => finding.code));
  let tried = 0;
  for (const code of codes) {
    const own = of.findings.filter((finding) => finding.code === code);
    const suggestion = bestOf({ of, findings: own, at, placed }, code, solve);
    if (suggestion) found.set(code, suggestion);
    tried += 1;
    yield tried / codes.size;
  }
  return found;
}

const solutionOf = (outcome: Outcome<Solution>): Solution | null => (outcome.ok ? outcome.value : null);

/** The first proposal that leaves nothing of the finding; else the first that is worth it. */
function bestOf(at: Case, code: FindingCode, solve: Solve): TriedSuggestion | null {
  let fair: TriedSuggestion | null = null;
  for (const proposal of proposalsFor(code, at)) {
    const tried = tryOut(at.of, proposal.change, code, solve);
    if (!tried || !isBetter(counted(at.of), counted(tried), code)) continue;
    const suggestion = suggestionOf(proposal, at.of, tried);
    if (!tried.findings.some((finding) => finding.code === code)) return suggestion;
    fair ??= suggestion;
  }
  return fair;
}

/** What may not get worse for a suggestion: how the axes pass a posture that the aim is not for, and its triangle, may. */
function counted({ layout, findings }: Solution): Finding[] {
  const served = new Set(posturesServed(layout).map(({ name }) => name));
  return findings.filter(
    ({ code, subject }) => !(code === 'posture-missed' || code === 'posture-triangle') || served.has(subject.posture),
  );
}

/** What a finding is about, on one side or the other; and the same for all that are about it. */
const kindOf = ({ code, subject }: Finding): FindingKind => ({ code, subject });
const kindKey = (finding: Finding): string => JSON.stringify(kindOf(finding));

function suggestionOf({ label, change }: Proposal, now: Solution, tried: Solution): TriedSuggestion {
  const left = new Set(tried.findings.map(kindKey));
  return {
    label,
    edits: editsOf(change, now.layoutIndex),
    clears: [...new Map(now.findings.map((finding) => [kindKey(finding), kindOf(finding)]))].flatMap(([key, kind]) =>
      left.has(key) ? [] : [kind],
    ),
    price: priceOf(now, tried),
  };
}

/** The project with a change, solved anew; null where it is not sound, or its geometry or stands alone show something worse. */
function tryOut(now: Solution, change: LayoutChange, code: FindingCode, solve: Solve): Solution | null {
  const { project, layout, layoutIndex: index } = now;
  const checked = checkProject({ ...project, layouts: project.layouts.with(index, changedLayout(layout, change)) });
  const made = checked.ok ? checked.value.layouts[index] : undefined;
  const of = checked.ok && made ? solutionOf(solve(checked.value, made, false)) : null;
  return of && !anyWorse(now.checks, of.checks, code) ? of : null;
}

/**
 * Whether a code's findings are better after than before, and nothing else is worse by more than a little; of what is as
 * grave as they, no more is said either.
 */
export function isBetter(before: readonly Finding[], after: readonly Finding[], code: FindingCode): boolean {
  if (anyWorse(before, after, code)) return false;
  const own = (findings: readonly Finding[]) => findings.filter((finding) => finding.code === code);
  const worst = Math.min(...own(before).map(({ level }) => harm[level]));
  const others = (findings: readonly Finding[], level: number) =>
    findings.filter((finding) => finding.code !== code && harm[finding.level] === level).length;
  for (let level = 0; level <= worst; level++) if (others(after, level) > others(before, level)) return false;
  const left = own(after);
  if (left.some(({ level }) => harm[level] < worst)) return false;
  return left.every(({ level }) => harm[level] > worst) || total(left) <= (1 - WORTH) * total(own(before));
}

const total = (findings: readonly Finding[]): number => findings.reduce((sum, finding) => sum + beyond(finding), 0);
