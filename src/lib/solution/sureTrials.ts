import { missTrials, type MissTrials } from '$lib/layout/missTrials.ts';
import type { Layout, Project, SideName } from '$lib/project/project.ts';

/** The trials of both sides. */
export type SureTrials = Readonly<Record<SideName, MissTrials>>;

/** Those of a layout by its project's `sure`. Yields the share that is done, 0…1. Null where an aim has no answer. */
export function* sureTrials({ speaker, sure }: Project, layout: Layout): Generator<number, SureTrials | null> {
  const halves = function* (side: SideName, done: number): Generator<number, MissTrials | null> {
    const steps = missTrials(speaker, layout, side, sure);
    for (let step = steps.next(); ; step = steps.next()) {
      if (step.done) return step.value;
      yield (done + step.value) / 2;
    }
  };
  const left = yield* halves('left', 0);
  const right = yield* halves('right', 1);
  return left && right && { left, right };
}
