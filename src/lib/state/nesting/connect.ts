import type { Line } from '$lib/state/nesting.svelte.ts';
import type { Ask } from './messages.ts';
import type { startWorker } from './startWorker.ts';

/** A line to the worker. What starts it and reads its answers is fetched only now; what is asked meanwhile waits. */
export function connect(): Line {
  const waiting: Ask[] = [];
  let worker: ReturnType<typeof startWorker> | null = null;
  let ended = false;
  const line: Line = {
    onmessage: null,
    onerror: null,
    postMessage(ask) {
      if (worker === null) waiting.push(ask);
      else worker.postMessage(ask);
    },
    terminate() {
      ended = true;
      worker?.terminate();
    },
    read(data) {
      if (worker === null) throw new TypeError('nothing is answered before the worker has started');
      return worker.read(data);
    },
  };
  const start = async (): Promise<void> => {
    const module = await import('./startWorker.ts');
    if (ended) return;
    worker = module.startWorker();
    worker.onmessage = (event) => line.onmessage?.(event);
    worker.onerror = (event) => line.onerror?.(event);
    for (const ask of waiting) worker.postMessage(ask);
  };
  start().catch(() => {
    if (!ended) line.onerror?.(new Event('error'));
  });
  return line;
}
