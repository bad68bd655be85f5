import { demoProject } from '$lib/project/demo.ts';
import { checkProject } from '$lib/project/parse.ts';
import type { Layout, Project } from '$lib/project/project.ts';
import { solve } from '$lib/solution/solve.ts';
import { faultLine } from '$lib/project/fault.ts';
import { medianTime, seeded, type Measured } from './measure.ts';

const DESKS = 64;

/** Desks that differ in seat, marks and lift, so that no two runs are alike. */
function desks(): readonly (readonly [Project, Layout])[] {
  const next = seeded(20260101);
  return Array.from({ length: DESKS }, () => {
    const document = structuredClone(demoProject) as unknown as { layouts: [Record<string, unknown>] };
    const [layout] = document.layouts;
    layout.listener = { setback: 100 + 300 * next(), earHeight: 1100 + 150 * next(), offset: 60 * next() - 30 };
    layout.placement = {
      left: { x: -400 - 60 * next(), y: 250 + 80 * next() },
      right: { x: 400 + 60 * next(), y: 250 + 80 * next() },
    };
    layout.stand = { lift: 10 + 20 * next() };
    const parsed = checkProject(document);
    if (!parsed.ok || !parsed.value.layouts[0]) throw new Error('a benchmark desk is not sound');
    return [parsed.value, parsed.value.layouts[0]] as const;
  });
}

/** A whole plan without sheets. */
export function benchPlan(): Measured {
  const all = desks();
  let sum = 0;
  let turn = 0;
  const run = (): void => {
    const [project, layout] = all[turn++ % DESKS] ?? all[0] ?? [];
    if (!project || !layout) return;
    const planned = solve(project, layout);
    if (!planned.ok) throw new Error(planned.faults.map(faultLine).join('; '));
    sum += planned.value.sides.right.tilt;
  };
  for (let i = 0; i < DESKS; i++) run();
  const checksum = sum.toFixed(6);
  return { name: 'plan, without sheets', median: medianTime(run, 60, DESKS), limit: 0.2, checksum };
}
