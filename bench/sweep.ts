import { demoProject } from '$lib/project/demo.ts';
import { checkProject } from '$lib/project/parse.ts';
import { measures } from '$lib/study/measures.ts';
import { sweep } from '$lib/study/sweep.ts';
import { medianTime, type Measured } from './measure.ts';

const STEPS = 101;

/** What the page draws at once of a number that is looked at over a range: every measure but sound and sheets, with gaps, kinks and findings. */
export function benchSweep(): Measured {
  const parsed = checkProject(demoProject);
  const layout = parsed.ok ? parsed.value.layouts[0] : undefined;
  if (!parsed.ok || !layout) throw new Error('the demo is sound');
  const of = measures.filter(({ needs }) => needs !== 'sound' && needs !== 'sheets');
  const request = { over: '/listener/setback', from: 80, to: 480, steps: STEPS, of, mirror: false };
  const run = () => {
    const swept = sweep(parsed.value, layout, request);
    if (!swept.ok) throw new Error('the benchmark’s range is sound');
    return swept.value;
  };
  const checksum = run()
    .rows.reduce((sum, { values }) => sum + (values['triangle-error'] ?? 0), 0)
    .toFixed(6);
  return { name: `sweep of ${STEPS} values, without sound`, median: medianTime(run, 7, 1), limit: 1000, checksum };
}
