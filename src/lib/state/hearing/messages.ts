import type { HeadMap, HeadPlane } from '$lib/acoustics/headMap.ts';
import type { Finding, FindingCode } from '$lib/plan/findings/finding.ts';
import type { TriedSuggestion } from '$lib/plan/findings/suggestion.ts';
import type { HeadRoomPlan } from '$lib/plan/headRoom.ts';
import type { SoundPlan } from '$lib/plan/soundDocument.ts';
import type { Project } from '$lib/project/project.ts';

/** What the worker is asked for: the newest question of a kind takes the place of the one before. */
export type Job = 'findings' | 'sound' | 'room' | 'plane';

interface Question {
  /** Told again with the answer. */
  readonly ticket: number;
  readonly project: Project;
  readonly layoutIndex: number;
}

export type Ask =
  | ({ readonly kind: 'findings' | 'sound' | 'room' } & Question)
  | ({ readonly kind: 'plane'; readonly where: HeadPlane } & Question)
  | { readonly kind: 'stop'; readonly job: Job };

/** What the sound and the seats suffer from; and suggestions by code, for all findings, null until they have been tried. */
export interface Heard {
  readonly findings: readonly Finding[];
  readonly suggestions: ReadonlyMap<FindingCode, TriedSuggestion> | null;
}

interface Answers {
  readonly findings: Heard;
  readonly sound: SoundPlan;
  readonly room: HeadRoomPlan;
  readonly plane: HeadMap;
}

export type Answer = {
  [Kind in Job]: { readonly kind: Kind; readonly ticket: number; readonly value: Answers[Kind] };
}[Job];

/** How much of a job is done, 0…1. */
export interface Progress {
  readonly kind: 'progress';
  readonly job: Job;
  readonly ticket: number;
  readonly share: number;
}

/** Why a question is not answered: something was thrown. */
export interface Failed {
  readonly kind: 'failed';
  readonly ticket: number;
  readonly message: string;
}

export type Reply = Answer | Progress | Failed;
