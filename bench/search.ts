import { demoProject } from '$lib/project/demo.ts';
import { checkProject } from '$lib/project/parse.ts';
import type { Layout } from '$lib/project/project.ts';
import { readAsk } from '$lib/study/ask.ts';
import { searchSteps, search } from '$lib/study/search.ts';
import type { Found } from '$lib/study/found.ts';
import type { Measured } from './measure.ts';

const right = (axis: 'x' | 'y', from: number, to: number, step: number) => ({ pointer: `/placement/right/${axis}`, from, to, step, mirror: true }); // prettier-ignore
const setback = (step: number) => ({ pointer: '/listener/setback', from: 100, to: 350, step });

/** What is asked, and what one core may take for it, ms. */
const asks = [
  {
    // Of two workers each has half of the million: under a second on two cores.
    name: 'search of 1,030,301 by the aim alone',
    limit: 2000,
    ask: {
      free: [right('x', 300, 540, 2.4), right('y', 200, 420, 2.2), setback(2.5)],
      rules: [{ measure: 'tilt', most: 16 }],
      aims: ['triangle-error', 'move'],
    },
  },
  {
    name: 'search of 18,538 with stands held clear of everything',
    limit: 3000,
    ask: {
      free: [right('x', 300, 540, 8), right('y', 200, 420, 10), setback(10)],
      rules: [
        { measure: 'clearance', least: 20 },
        { measure: 'tilt', most: 16 },
      ],
      aims: ['triangle-error', 'move'],
    },
  },
  {
    // 2,000 a second.
    name: 'search of 1,001 by the reflection from the desk',
    limit: 500,
    ask: {
      free: [right('x', 300, 540, 20), right('y', 200, 380, 30), setback(25)],
      rules: [],
      aims: ['desk-level', 'move'],
    },
  },
] as const;

/** Searches whole, on one core, in what time and what memory. */
export function benchSearch(): readonly Measured[] {
  const parsed = checkProject(demoProject);
  const layout = parsed.ok ? parsed.value.layouts[0] : undefined;
  if (!parsed.ok || !layout) throw new Error('the demo is sound');
  const project = parsed.value;
  const measured = asks.map(({ name, limit, ask: document }): Measured => {
    const ask = readAsk(document, layout);
    if (!ask.ok) throw new Error('the benchmark’s asks are sound');
    // The first run warms up; the better of the next two counts, for either may have had to wait.
    const times = [0, 1, 2].map(() => {
      const start = performance.now();
      const found = search(project, layout, ask.value, 1);
      return { time: performance.now() - start, checksum: checksumOf(found) };
    });
    const [, second, third] = times;
    return { name, limit, median: Math.min(second?.time ?? NaN, third?.time ?? NaN), checksum: third?.checksum ?? '' };
  });
  return [...measured, memory(layout)];

  /** What a search of a million holds at its end, beside what was there before, MB in place of ms. */
  function memory(of: Layout): Measured {
    const ask = readAsk(asks[0].ask, of);
    if (!ask.ok) throw new Error('the benchmark’s asks are sound');
    const before = process.memoryUsage().heapUsed;
    let most = 0;
    let count = 0;
    const steps = searchSteps(project, of, ask.value, 1, { worker: 0, of: 1 });
    for (let step = steps.next(); !step.done; step = steps.next()) {
      count += 1;
      most = Math.max(most, process.memoryUsage().heapUsed - before);
    }
    return { name: 'its heap at the most, MB in place of ms', median: most / 2 ** 20, limit: 200, checksum: String(count) }; // prettier-ignore
  }
}

const checksumOf = ({ front }: Found): string =>
  front.reduce((sum, { values }) => sum + Object.values(values).reduce<number>((all, value) => all + (value ?? 0), 0), 0).toFixed(6); // prettier-ignore
