import { benchAimKernel } from './aimKernel.ts';
import { benchCompare } from './compare.ts';
import { benchCutOrder } from './cutOrder.ts';
import { benchListeningArea } from './listeningArea.ts';
import { benchNesting } from './nesting.ts';
import { benchPlacing } from './placing.ts';
import { benchPlan } from './plan.ts';
import { benchRandomPlans } from './randomPlans.ts';
import { benchResponse } from './response.ts';
import { benchSearch } from './search.ts';
import { benchSound } from './sound.ts';
import { benchSweep } from './sweep.ts';
import type { Measured } from './measure.ts';

const benches: readonly (() => Measured | readonly Measured[])[] = [
  benchPlan,
  benchRandomPlans,
  benchPlacing,
  benchSound,
  benchListeningArea,
  benchAimKernel,
  benchCompare,
  benchSweep,
  benchSearch,
  benchResponse,
  ...benchNesting,
  benchCutOrder,
];

const held = (time: number, limit: number): string => (time < limit ? `under ${limit} ms` : `NOT under ${limit} ms`);

/** One line: median, what it should stay under, and a checksum that must not change. */
function lineOf({ name, median, limit, tail, checksum }: Measured): string {
  const verdict = limit === null ? '' : held(median, limit);
  const slow = tail
    ? ` · p99 ${tail.p99.toFixed(2)} ms ${held(tail.p99, tail.limit)}, worst ${tail.worst.toFixed(2)} ms`
    : '';
  return `${name}: median ${median.toFixed(4)} ms ${verdict}${slow} · checksum ${checksum}\n`;
}

/** `npm run bench -- plan` runs those alone whose function carries the word, as `benchRandomPlans` carries "plan". */
const word = process.argv[2]?.toLowerCase() ?? '';
const wanted = benches.filter(({ name }) => name.toLowerCase().includes(word));
for (const bench of wanted) for (const one of [bench()].flat()) process.stdout.write(lineOf(one));
