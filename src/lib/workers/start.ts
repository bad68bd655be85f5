import JobWorker from './job.worker.ts?worker';
import type { JobName } from './jobs.ts';

/** Starts a worker for one job; the browser's tools show it by that name. Throws where the browser refuses. */
export const startWorker = (name: JobName): Worker => new JobWorker({ name });
