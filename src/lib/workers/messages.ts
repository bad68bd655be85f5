import type { Input, JobAnswer, JobName } from './jobs.ts';

/** What the page sends. The ticket comes back with every reply. */
export type Request<Name extends JobName = JobName> = {
  readonly [Job in Name]: { readonly job: Job; readonly ticket: number; readonly input: Input<Job> };
}[Name];

/**
 * What a worker sends. Both ends are of one build, or the worker would not have started: its address holds the hash of what
 * is in it. Their messages are therefore trusted as they come.
 */
export type Reply<Name extends JobName = JobName> = { readonly ticket: number } & (
  | { readonly kind: 'progress'; readonly share: number }
  /** Final, or the first of several. */
  | { readonly kind: 'answer'; readonly value: JobAnswer<Name>; readonly final: boolean }
  | { readonly kind: 'failed'; readonly message: string }
);
