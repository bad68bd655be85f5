import type { Line } from '$lib/state/nesting.svelte.ts';
import NestingWorker from './nesting.worker.ts?worker';

/** Starts the worker. */
export const connect = (): Line => new NestingWorker();
