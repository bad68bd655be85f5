import fc from 'fast-check';
import { runs } from './runs.ts';

/** The seed of every property unless the environment names another: `WEDGEWRIGHT_SEED=7 npm run unit` looks elsewhere. */
const SEED = 20260101;

fc.configureGlobal({ seed: Number(process.env.WEDGEWRIGHT_SEED ?? SEED), numRuns: runs(100) });
