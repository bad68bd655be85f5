import { demoProject } from '$lib/project/demo.ts';
import { checkProject } from '$lib/project/parse.ts';
import { toTheEnd } from '$lib/project/toTheEnd.ts';
import { listeningAreaSteps } from '$lib/solution/listeningArea.ts';
import { solve } from '$lib/solution/solve.ts';
import { medianTime, type Measured } from './measure.ts';

/** How far the head may move: three maps of 60 × 60 and twelve reaches, for the demo's two postures. */
export function benchListeningArea(): Measured {
  const parsed = checkProject(demoProject);
  const layout = parsed.ok ? parsed.value.layouts[0] : undefined;
  if (!parsed.ok || !layout) throw new Error('the demo is sound');
  const planned = solve(parsed.value, layout);
  if (!planned.ok) throw new Error('the demo can be planned');
  const run = () => toTheEnd(listeningAreaSteps(parsed.value, layout, planned.value));
  const { box } = run();
  const checksum = Object.values(box)
    .reduce((sum, { distance }) => sum + distance, 0)
    .toFixed(6);
  return { name: 'head room, three maps', median: medianTime(run, 30, 1), limit: 50, checksum };
}
