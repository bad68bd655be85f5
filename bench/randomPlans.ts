import { checkProject } from '$lib/project/parse.ts';
import { plan } from '$lib/plan/plan.ts';
import { randomProject } from '../tests/randomProject.ts';
import { seeded, type Measured } from './measure.ts';

const PROJECTS = 3000;
/** Plans that are made before any is timed, so that no script runs for the first time. */
const WARMING = 200;

/** The least of so many counts: the rest is what the collector of garbage and the compiler did meanwhile. */
const TRIES = 3;

/** Plans of any build, base and detail, sheets left out; projects that have none cost time as well. */
export function benchRandomPlans(): Measured {
  const next = seeded(20260301);
  const times: number[] = [];
  let [planned, sum] = [0, 0];
  for (let drawn = 0; times.length < PROJECTS; drawn++) {
    const read = checkProject(randomProject(next));
    const layout = read.ok ? read.value.layouts[0] : undefined;
    if (!read.ok || !layout) continue;
    const made = plan(read.value, layout);
    if (drawn < WARMING) continue;
    times.push(Math.min(...Array.from({ length: TRIES }, () => processorTime(() => plan(read.value, layout)))));
    if (!made.ok) continue;
    planned++;
    sum += made.value.sides.right.tilt + made.value.parts.length;
  }
  times.sort((a, b) => a - b);
  const at = (share: number): number => times[Math.floor(share * (PROJECTS - 1))] ?? NaN;
  return {
    name: `plans of ${PROJECTS} random projects, without sheets`,
    median: at(0.5),
    limit: null,
    tail: { p99: at(0.99), worst: at(1), limit: 10 },
    checksum: `${planned} ${sum.toFixed(6)}`,
  };
}

/** ms that the processor worked: what else the machine does must not make a plan look slow. */
function processorTime(run: () => unknown): number {
  const before = process.cpuUsage();
  run();
  const { user, system } = process.cpuUsage(before);
  return (user + system) / 1000;
}
