import type { Line } from '$lib/state/nesting.svelte.ts';
import { readReply } from './messages.ts';
import NestingWorker from './nesting.worker.ts?worker';

/** Starts the worker. */
export const startWorker = (): Line => Object.assign(new NestingWorker(), { read: readReply });
