import { readReply } from './messages.ts';
import NestingWorker from './nesting.worker.ts?worker';

/** Starts the worker, with what reads its answers. */
export const startWorker = () => Object.assign(new NestingWorker(), { read: readReply });
