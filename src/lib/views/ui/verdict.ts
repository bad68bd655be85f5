import type { OpenProject } from '$lib/document/openProject.svelte.ts';
import type { Plan } from '$lib/solution/document.ts';
import type { JobClient } from '$lib/workers/client.svelte.ts';
import { placeOf } from '$lib/document/fields.ts';
import { messageOf } from '$lib/document/messages.ts';
import type { Fault } from '$lib/project/fault.ts';
import type { LengthDisplay } from '$lib/project/units.ts';
import type { Finding, FindingCode } from '$lib/solution/findings/finding.ts';
import { headlineText } from '$lib/solution/findings/headline.ts';
import type { FindingLevel } from '$lib/solution/findings/told.ts';
import { merged } from '$lib/solution/findings/whole.ts';
import { harm } from '$lib/solution/findings/harm.ts';
import { countText } from './formatNumber.ts';

/** Whether all is well, in one line. */
export interface Verdict {
  /** The worst that there is; `waiting` where nothing was found by the checks so far and others are still at work. */
  readonly level: FindingLevel | 'good' | 'waiting';
  /** How many there are, or that there is none: `1 caution, 3 notes`. */
  readonly count: string;
  /** The worst of them, in short. */
  readonly detail: string;
  /** What has still to be checked, or could not be; empty where all is. */
  readonly rest: string;
  /** The field that is wrong, or the finding that is worst; null where there is neither. */
  readonly leads: { readonly pointer: string } | { readonly code: FindingCode } | null;
}

/** Of values that cannot be: which field, and what it takes. There is at least one. */
export function verdictOfFaults(faults: readonly Fault[], draft: unknown, display: LengthDisplay): Verdict {
  const [first] = faults;
  const count = countText(faults.length, 'fault', 'faults');
  if (!first) return { level: 'fault', count, detail: '', rest: '', leads: null };
  const detail = `${placeOf(first.pointer)}: ${messageOf(first, draft, display)}`;
  return { level: 'fault', count, detail, rest: '', leads: { pointer: first.pointer } };
}

/** What the checks of a plan have found just now, or what is wrong with what was typed. `client`: of the checks that take their time. */
export function verdictNow(open: OpenProject, client: JobClient<'findings'>, shown: Plan): Verdict {
  if (open.toldFaults.length > 0) return verdictOfFaults(open.toldFaults, open.draft, open.display);
  const answer = client.answer?.of === shown ? client.answer.value.findings : null;
  const awaited = answer !== null ? 'nothing' : client.failure === null ? 'sound' : 'failed';
  return verdictOf([...shown.checks, ...(answer ?? [])], awaited, open.display);
}

/** What has still to be checked: the sound, or nothing; or its checks failed. */
export type Awaited = 'nothing' | 'sound' | 'failed';

const awaitedText: Readonly<Record<Awaited, string>> = {
  nothing: '',
  sound: 'The sound is still being checked.',
  failed: 'The sound could not be checked.',
};

/** Of what the checks found so far. Nothing is called well before all have answered. */
export function verdictOf(findings: readonly Finding[], awaited: Awaited, display: LengthDisplay): Verdict {
  const told = merged(findings).sort((a, b) => harm[a.level] - harm[b.level]);
  const [worst] = told;
  const rest = awaitedText[awaited];
  if (!worst) {
    return awaited === 'nothing'
      ? { level: 'good', count: 'All is well', detail: '', rest, leads: null }
      : { level: 'waiting', count: 'Nothing found so far', detail: '', rest, leads: null };
  }
  const count = counted
    .map(([level, one, many]) => [told.filter((finding) => finding.level === level).length, one, many] as const)
    .flatMap(([many, one, more]) => (many === 0 ? [] : [countText(many, one, more)]))
    .join(', ');
  return { level: worst.level, count, detail: headlineText(worst, display), rest, leads: { code: worst.code } };
}

const counted = [
  ['fault', 'fault', 'faults'],
  ['caution', 'caution', 'cautions'],
  ['note', 'note', 'notes'],
] as const;
