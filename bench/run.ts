import { benchHeadRoom } from './headRoom.ts';
import { benchNesting } from './nesting.ts';
import { benchPlan } from './plan.ts';
import { benchRandomPlans } from './randomPlans.ts';
import { benchSound } from './sound.ts';
import type { Measured } from './measure.ts';

const benches: readonly (() => Measured | readonly Measured[])[] = [
  benchPlan,
  benchRandomPlans,
  benchSound,
  benchHeadRoom,
  ...benchNesting,
];

const held = (time: number, limit: number): string => (time < limit ? `under ${limit} ms` : `NOT under ${limit} ms`);

/** Prints one line a benchmark: median, what it should stay under, and a checksum that must not change. */
for (const { name, median, limit, tail, checksum } of benches.flatMap((bench) => bench())) {
  const verdict = limit === null ? '' : held(median, limit);
  const slow = tail
    ? ` · p99 ${tail.p99.toFixed(2)} ms ${held(tail.p99, tail.limit)}, worst ${tail.worst.toFixed(2)} ms`
    : '';
  process.stdout.write(`${name}: median ${median.toFixed(4)} ms ${verdict}${slow} · checksum ${checksum}\n`);
}
