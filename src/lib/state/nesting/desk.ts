import { cutterOf } from '$lib/workshop/beam.ts';
import { nest } from '$lib/workshop/nest.ts';
import { solve } from '$lib/plan/solve.ts';
import { readAsk, type Ask, type Reply } from './messages.ts';

/** Work between two pauses, ms: short enough to hear a newer question at once, long enough that pausing costs nothing. */
const SLICE = 25;
/** However slow the machine, nesting ends by then, ms. The answers up to then are the same on every machine. */
const LONGEST = 60_000;

interface Surroundings {
  readonly post: (reply: Reply) => void;
  /** Resolves once whatever has been said meanwhile has been heard. */
  readonly pause: () => Promise<void>;
  /** ms, from any start. */
  readonly now: () => number;
  /** See `NestOptions`, and its default. */
  readonly budget?: number;
}

/**
 * Takes questions in and gives answers out, whatever stands between: a worker, or a test. The newest question takes the
 * place of the one before. Whatever is thrown is told as a failure.
 */
export function nestingDesk({ post, pause, now, ...effort }: Surroundings): (data: unknown) => Promise<void> {
  let newest: number | null = null;

  async function work(ask: Ask): Promise<void> {
    const { ticket, project, layoutIndex } = ask;
    const layout = project.layouts[layoutIndex];
    if (layout === undefined) throw new RangeError(`expected the place of a layout, got ${layoutIndex}`);
    const outcome = solve(project, layout);
    if (!outcome.ok) {
      post({ kind: 'refused', ticket, faults: outcome.faults });
      return;
    }
    const steps = nest(outcome.value.parts, project.stock, cutterOf(project), {
      ...layout.arrangement,
      ...effort,
    });
    const began = now();
    while (newest === ticket) {
      const slice = run(steps, now, SLICE);
      if (slice.better !== null) post({ kind: 'better', ticket, nested: slice.better });
      if (slice.end?.ok === false) post({ kind: 'refused', ticket, faults: slice.end.faults });
      else if (slice.end !== null) post({ kind: 'ended', ticket, ending: 'done' });
      else if (now() - began > LONGEST) post({ kind: 'ended', ticket, ending: 'time' });
      else {
        post({ kind: 'progress', ticket, share: slice.share });
        await pause();
        continue;
      }
      return;
    }
  }

  return async (data) => {
    const given = ticketOf(data);
    try {
      const ask = readAsk(data);
      newest = ask.ticket;
      await work(ask);
    } catch (error) {
      post({ kind: 'failed', ticket: given, message: error instanceof Error ? error.message : String(error) });
    }
  };
}

type Steps = ReturnType<typeof nest>;
type Better = Extract<Reply, { kind: 'better' }>['nested'];

/** Steps until the time is up: the last better answer among them, how far it has come, and its end once it is there. */
function run(steps: Steps, now: () => number, time: number) {
  const until = now() + time;
  let better: Better | null = null;
  let share = 0;
  do {
    const step = steps.next();
    if (step.done === true) return { better, share: 1, end: step.value };
    if (step.value.kind === 'better') {
      // The first answer is shown at once.
      const first = better === null && share === 0;
      better = step.value.nested;
      if (first) break;
    } else share = step.value.share;
  } while (now() < until);
  return { better, share, end: null };
}

/** The ticket of a message that may be none, so that a failure can still be told to whoever asked. */
const ticketOf = (data: unknown): number =>
  typeof data === 'object' && data !== null && 'ticket' in data && typeof data.ticket === 'number' ? data.ticket : 0;
