import { demoProject } from '$lib/project/demo.ts';
import { MOST_LAYOUTS } from '$lib/project/limits.ts';
import { checkProject } from '$lib/project/parse.ts';
import { compare } from '$lib/study/compare.ts';
import { measures } from '$lib/study/measures.ts';
import { medianTime, seeded, type Measured } from './measure.ts';

/** As many layouts as a project holds, side by side by everything but sound and sheets, with every stand in every other layout. */
export function benchCompare(): Measured {
  const next = seeded(20260401);
  const [first] = demoProject.layouts;
  const layouts = Array.from({ length: MOST_LAYOUTS }, (_, index) => ({
    ...first,
    name: `layout ${index}`,
    listener: { setback: 100 + 300 * next(), earHeight: 1100 + 150 * next(), offset: 60 * next() - 30 },
  }));
  const parsed = checkProject({ ...demoProject, layouts });
  if (!parsed.ok) throw new Error('the benchmark’s layouts are sound');
  const by = measures.filter(({ needs }) => !['heard', 'sound', 'sheets'].includes(needs));
  const run = () => compare(parsed.value, parsed.value.layouts, by);
  const checksum = run().stands.reduce((sum, { miss }) => sum + miss, 0).toFixed(6); // prettier-ignore
  return {
    name: `compare of ${MOST_LAYOUTS} layouts, without sound`,
    median: medianTime(run, 15, 1),
    limit: 200,
    checksum,
  };
}
