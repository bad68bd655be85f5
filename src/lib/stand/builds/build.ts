import type { BuildName, StandBody } from '$lib/stand/body.ts';
import type { BuildRequest } from '$lib/stand/buildRequest.ts';
import type { Outcome } from '$lib/stand/outcome.ts';

/** Settings of a stand that only some builds have a use for. */
export type BuildDetail = 'rods' | 'relief' | 'cheeks' | 'ribs' | 'pockets';

/** One way to build a stand: all that forms, papers and the plan ask of it. */
export interface Build {
  readonly name: BuildName;
  /** As it is offered: `stacked slices`. */
  readonly label: string;
  /** What a stand is made of: `slices glued across the width`. */
  readonly description: string;
  /** What it has a use for; what else the settings ask for is left out, with a note. */
  readonly details: readonly BuildDetail[];
  /** Whether some of it is printed. */
  readonly prints?: true;
  readonly body: (request: BuildRequest) => Outcome<StandBody>;
}
