import { vi } from 'vitest';
import type { Reply, Request } from '$lib/workers/messages.ts';

/** Workers that only remember, and send what a test says. */
export function fakeWorkers() {
  const asked: Request[] = [];
  const terminate = vi.fn();
  const workers: Worker[] = [];
  const start = vi.fn((name: string): Worker => {
    const worker = Object.assign(new EventTarget(), {
      name,
      postMessage: (request: Request) => void asked.push(request),
      terminate,
      onmessage: null,
      onmessageerror: null,
      onerror: null,
    });
    workers.push(worker);
    return worker;
  });
  const last = (): Worker => {
    const worker = workers.at(-1);
    if (!worker) throw new Error('no worker was started');
    return worker;
  };
  /** From the worker that was started last. */
  const reply = (data: Reply): void => last().onmessage?.(new MessageEvent('message', { data }));
  const fail = (event: Event): void => {
    const worker = last();
    // As the browser does: a worker's handler gets the event itself.
    worker.onerror?.call(worker, event as ErrorEvent);
  };
  const garble = (): void => last().onmessageerror?.(new MessageEvent('messageerror'));
  return { asked, start, terminate, reply, fail, garble };
}
