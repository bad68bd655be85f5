import { jobs, type JobName } from './jobs.ts';
import type { Reply, Request } from './messages.ts';

/** Work between two pauses, ms: short enough to notice a newer question at once, long enough that pausing costs nothing. */
const SLICE = 25;

interface Surroundings {
  readonly post: (reply: Reply) => void;
  /** Resolves once whatever was sent meanwhile has been received. */
  readonly pause: () => Promise<void>;
  /** ms, from any start. */
  readonly now: () => number;
}

/**
 * Answers requests, whatever stands between: a worker, or a test. The newest takes the place of the one before, between two
 * steps of it. Whatever is thrown is sent as a failure.
 *
 * @param table What does the jobs; default: what the program has.
 */
export function handler({ post, pause, now }: Surroundings, table = jobs): (request: Request) => Promise<void> {
  let newest = 0;

  async function work<Name extends JobName>({ job, ticket, input }: Request<Name>): Promise<void> {
    const steps = table[job](input);
    while (newest === ticket) {
      const until = now() + SLICE;
      let step = steps.next();
      while (!step.done && 'share' in step.value && now() < until) step = steps.next();
      if (step.done) return post({ kind: 'answer', ticket, value: step.value, final: true });
      if ('share' in step.value) post({ kind: 'progress', ticket, share: step.value.share });
      else post({ kind: 'answer', ticket, value: step.value.answer, final: false });
      await pause();
    }
  }

  return async (request) => {
    const { ticket } = request;
    newest = ticket;
    try {
      // Of several that came together only the newest is begun.
      await pause();
      await work(request);
    } catch (error) {
      post({ kind: 'failed', ticket, message: error instanceof Error ? error.message : String(error) });
    }
  };
}
