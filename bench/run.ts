import { benchHeadRoom } from './headRoom.ts';
import { benchNesting } from './nesting.ts';
import { benchPlan } from './plan.ts';
import { benchSound } from './sound.ts';
import type { Measured } from './measure.ts';

const benches: readonly (() => Measured | Promise<Measured>)[] = [
  benchPlan,
  benchSound,
  benchHeadRoom,
  ...benchNesting,
];

/** Prints one line a benchmark: median, what it should stay under, and a checksum that must not change. */
for (const bench of benches) {
  const { name, median, limit, checksum } = await bench();
  const verdict = limit === null ? '' : median < limit ? `under ${limit} ms` : `NOT under ${limit} ms`;
  process.stdout.write(`${name}: median ${median.toFixed(4)} ms ${verdict} · checksum ${checksum}\n`);
}
