import type { HeardOne } from '$lib/project/project.ts';
import { demoProject } from '$lib/project/demo.ts';
import { checkProject } from '$lib/project/parse.ts';
import type { MeasuredCurve } from '$lib/proof/heard/curve.ts';
import { onGrid } from '$lib/proof/heard/onGrid.ts';
import { solve } from '$lib/solution/solve.ts';
import type { Solution } from '$lib/solution/solution.ts';

/** Power of direct sound and one reflection, later by `delay` seconds and so much weaker. */
export const combPower = (f: number, delay: number, gain: number): number =>
  1 + gain * gain + 2 * gain * Math.cos(2 * Math.PI * f * delay);

/** A curve at evenly spaced frequencies, 2 Hz apart. */
export function measuredAs(power: (f: number) => number, offset = 0): MeasuredCurve {
  const frequencies = Float64Array.from({ length: 10_000 }, (_, i) => 18 + 2 * i);
  return { frequencies, levels: frequencies.map((f) => offset + 10 * Math.log10(power(f))), phases: null };
}

export const STILL = { x: 0, y: 0, z: 0 };

export function heardOne(curve: MeasuredCurve, more: Partial<HeardOne> = {}): HeardOne {
  const kept = onGrid(curve);
  if (!kept) throw new Error('covers an octave');
  return { name: 'a', of: 'right', at: 'seat', smoothed: 'none', moved: STILL, curve: kept, ...more };
}

/** The demo's first layout with these measured responses; of its surroundings, nothing but the desk. */
export function demoHearing(heard: readonly HeardOne[]): Solution {
  const document = structuredClone(demoProject) as unknown as { layouts: [Record<string, unknown>] };
  document.layouts[0].built = { sides: { left: {}, right: {} }, heard };
  document.layouts[0].room = {};
  document.layouts[0].monitors = [];
  const parsed = checkProject(document);
  const layout = parsed.ok ? parsed.value.layouts[0] : undefined;
  if (!parsed.ok || !layout) throw new Error(JSON.stringify(parsed));
  const solved = solve(parsed.value, layout);
  if (!solved.ok) throw new Error(JSON.stringify(solved.faults));
  return solved.value;
}
