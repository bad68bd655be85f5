import { checkProject } from '$lib/project/parse.ts';
import type { Layout, Project } from '$lib/project/project.ts';
import { solve } from '$lib/solution/solve.ts';
import { faultLine } from '$lib/project/fault.ts';
import { likelyProject } from '../tests/randomProject.ts';
import { seeded, type Measured } from './measure.ts';

const PLANS = 3000;
/** Projects that are planned before any is timed, so that no script runs for the first time. */
const WARMING = 400;
/** Part of the projects that must have a plan: the bench is about stands, not about refusals. */
const LEAST_PLANNED = 0.7;

/** The least of so many counts: the rest is what the collector of garbage and the compiler did meanwhile. */
const TRIES = 3;

/** Plans of any build, base and detail, sheets left out. Refusals, which cost time as well, are told apart. */
export function benchRandomPlans(): readonly Measured[] {
  const next = seeded(20260301);
  const drawn = Array.from({ length: WARMING }, () => likely(next));
  for (const [project, layout] of drawn) solve(project, layout);
  const [planned, refused]: [number[], number[]] = [[], []];
  let sum = 0;
  while (planned.length < PLANS) {
    const [project, layout] = likely(next);
    const made = solve(project, layout);
    const time = Math.min(...Array.from({ length: TRIES }, () => processorTime(() => solve(project, layout))));
    (made.ok ? planned : refused).push(time);
    if (made.ok) sum += made.value.sides.right.tilt + made.value.parts.length;
    else if (made.faults.some((fault) => faultLine(fault).includes('mistake of the program'))) {
      throw new Error(made.faults.map(faultLine).join('; '));
    }
  }
  const share = planned.length / (planned.length + refused.length);
  if (share < LEAST_PLANNED) throw new Error(`expected ${LEAST_PLANNED} of the projects to have a plan, got ${share}`);
  return [
    told(`plans of ${PLANS} random projects, without sheets`, planned, sum.toFixed(6)),
    told(`refusals of ${refused.length} such projects`, refused, String(refused.length)),
  ];
}

function likely(next: () => number): readonly [Project, Layout] {
  for (;;) {
    const read = checkProject(likelyProject(next));
    const layout = read.ok ? read.value.layouts[0] : undefined;
    if (read.ok && layout) return [read.value, layout];
  }
}

function told(name: string, times: readonly number[], checksum: string): Measured {
  const sorted = [...times].sort((a, b) => a - b);
  const at = (share: number): number => sorted[Math.floor(share * (sorted.length - 1))] ?? NaN;
  return { name, median: at(0.5), limit: null, tail: { p99: at(0.99), worst: at(1), limit: 10 }, checksum };
}

/** ms that the processor worked: what else the machine does must not make a plan look slow. */
function processorTime(run: () => unknown): number {
  const before = process.cpuUsage();
  run();
  const { user, system } = process.cpuUsage(before);
  return (user + system) / 1000;
}
