import type { Fault } from '$lib/project/fault.ts';
import type { WholeFinding } from '$lib/solution/findings/whole.ts';
import type { Plan } from '$lib/solution/document.ts';

/** One of the layouts that stand side by side. */
export interface Compared {
  readonly name: string;
  readonly letter: string;
  /** Null where it has no answer. */
  readonly plan: Plan | null;
  /** Why it has none. */
  readonly reason: readonly Fault[];
  /** Null while they are awaited, and where there is no plan. */
  readonly findings: readonly WholeFinding[] | null;
}
