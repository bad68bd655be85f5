import type { Result } from '$lib/project/fault.ts';
import type { Sheet } from '$lib/workshop/part.ts';
import type { Plan } from './document.ts';
import type { Finding, FindingCode } from '$lib/solution/findings/finding.ts';
import type { TriedSuggestion } from '$lib/solution/findings/suggestion.ts';
import type { SurePlan } from './howSure.ts';
import type { SoundPlan } from './soundDocument.ts';

/**
 * Everything that follows from a project and one of its layouts, whoever asks: page, command, paper and files read this
 * and nothing else. Its plan is worked out at once; each further
 * member when it is first read, and then kept.
 */
export interface Solution extends Plan {
  /** Some milliseconds. */
  readonly sound: SoundPlan;
  /** What the doubts of the measured values leave open at the head; null where nothing can be said. */
  readonly sure: SurePlan | null;
  /** Everything that all checks have to say, of geometry, stands, sound and seats, worst first. Asks for the sound. */
  readonly findings: readonly Finding[];
  /** What would mend findings, by their code, each tried on the whole solution. Tenths of a second and more. */
  readonly suggestions: ReadonlyMap<FindingCode, TriedSuggestion>;
  /**
   * How the parts lie, nested from the seed of the layout by a fixed budget of work: the same wherever it is asked for.
   * Refused, with pointers from the project, where a part is larger than its sheet, there are too few sheets, or a
   * locked part cannot lie where it is locked. Seconds.
   */
  readonly sheets: Result<readonly Sheet[]>;
}
