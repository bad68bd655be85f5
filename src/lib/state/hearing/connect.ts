import type { Line } from '$lib/state/hearing.svelte.ts';
import HearingWorker from './hearing.worker.ts?worker';

/** Starts the worker. */
export const connect = (): Line => new HearingWorker();
