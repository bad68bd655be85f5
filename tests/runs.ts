/** Which share of its runs a property makes unless the environment names another: `WEDGEWRIGHT_RUNS=1 npm run unit` makes all. */
const SHARE = Number(process.env.WEDGEWRIGHT_RUNS ?? 0.1);

/** Fewer runs than this meet too few of a property's cases to mean anything. */
const LEAST = 15;

/**
 * How often a property runs here: `all` runs times the share, rounded up, yet at least 15 (or all, where that is less).
 * @param all what the property is worth when time is no matter, 1 or more
 */
export const runs = (all: number): number => Math.max(Math.ceil(all * SHARE), Math.min(all, LEAST));
