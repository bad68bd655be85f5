import type { Line } from '$lib/state/hearing.svelte.ts';
import HearingWorker from './hearing.worker.ts?worker';

/** Starts the worker. */
export function connect(): Line {
  const worker = new HearingWorker();
  const line: Line = {
    onmessage: null,
    onerror: null,
    postMessage: (ask) => worker.postMessage(ask),
    terminate: () => worker.terminate(),
  };
  worker.onmessage = (event) => line.onmessage?.(event);
  worker.onerror = (event) => line.onerror?.(event);
  return line;
}
