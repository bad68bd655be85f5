/** What one benchmark found. */
export interface Measured {
  readonly name: string;
  /** Median time of one run, ms. */
  readonly median: number;
  /** What it should stay under, ms; null for a mere reading. */
  readonly limit: number | null;
  /** Of runs that differ: what one in a hundred takes longer than, what that should stay under, and the longest, ms. */
  readonly tail?: { readonly p99: number; readonly limit: number; readonly worst: number };
  /** A number that depends on every result, so that nothing can be left out unseen: the same on every machine. */
  readonly checksum: string;
}

/** Runs something `rounds` times in batches and takes the median time of one run. */
export function medianTime(run: () => void, rounds: number, batch: number): number {
  const times: number[] = [];
  for (let round = 0; round < rounds; round++) {
    const start = performance.now();
    for (let i = 0; i < batch; i++) run();
    times.push((performance.now() - start) / batch);
  }
  times.sort((a, b) => a - b);
  return times[Math.floor(times.length / 2)] ?? NaN;
}

/** A seeded source of numbers in 0…1 (mulberry32, public domain). */
export function seeded(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state);
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed;
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4294967296;
  };
}
