import { headMap } from '$lib/acoustics/headMap.ts';
import { suggestionSteps } from '$lib/plan/findings/suggest.ts';
import { headRoomSteps } from '$lib/plan/headRoom.ts';
import { hearingOf } from '$lib/plan/headVoices.ts';
import type { Solution } from '$lib/plan/solution.ts';
import { solve } from '$lib/plan/solve.ts';
import { faultLine } from '$lib/project/fault.ts';
import type { Ask, Job, Reply } from './messages.ts';

type Question = Exclude<Ask, { readonly kind: 'stop' }>;

/**
 * Takes questions in and gives answers out, whatever stands between: a worker, or a test. Between the steps of a job it
 * pauses, so that it can be told to stop, or asked something newer. Whatever is thrown is told as a failure, and so is a
 * project that has no plan: nobody asks of one.
 *
 * @param pause Resolves once whatever has been said meanwhile has been heard.
 */
export function hearingDesk(post: (reply: Reply) => void, pause: () => Promise<void>): (ask: Ask) => Promise<void> {
  const newest = new Map<Job, number>();
  return async (ask) => {
    if (ask.kind === 'stop') {
      newest.delete(ask.job);
      return;
    }
    const { kind, ticket } = ask;
    newest.set(kind, ticket);
    await pause();
    try {
      const steps = work(ask);
      while (newest.get(kind) === ticket) {
        const step = steps.next();
        if (step.done) return;
        post(step.value);
        await pause();
      }
    } catch (error) {
      post({ kind: 'failed', ticket, message: error instanceof Error ? error.message : String(error) });
    }
  };
}

function* work(ask: Question): Generator<Reply, void> {
  const layout = ask.project.layouts[ask.layoutIndex];
  if (layout === undefined) throw new RangeError(`expected the place of a layout, got ${ask.layoutIndex}`);
  const outcome = solve(ask.project, layout);
  if (!outcome.ok) throw new Error(outcome.faults.map(faultLine).join('; '));
  yield* answers(ask, outcome.value);
}

function* answers(ask: Question, of: Solution): Generator<Reply, void> {
  const { kind, ticket } = ask;
  const { project, layout } = of;
  switch (kind) {
    case 'sound':
      return yield { kind, ticket, value: of.sound };
    case 'plane':
      return yield { kind, ticket, value: headMap(hearingOf(project, of), ask.where) };
    case 'room': {
      const steps = headRoomSteps(project, layout, of);
      for (let step = steps.next(); ; step = steps.next()) {
        if (step.done) return yield { kind, ticket, value: step.value };
        yield { kind: 'progress', job: kind, ticket, share: step.value };
      }
    }
    case 'findings':
      return yield* findings(ask, of);
  }
}

/** The findings at once, the suggestions once each has been tried. */
function* findings({ ticket }: Question, of: Solution): Generator<Reply, void> {
  const found = of.findings.filter((finding) => !of.checks.includes(finding));
  yield { kind: 'findings', ticket, value: { findings: found, suggestions: null } };
  const steps = suggestionSteps(of);
  for (let step = steps.next(); ; step = steps.next()) {
    if (step.done) return yield { kind: 'findings', ticket, value: { findings: found, suggestions: step.value } };
    yield { kind: 'progress', job: 'findings', ticket, share: step.value };
  }
}
