import { headOf } from '$lib/layout/ears.ts';
import { placeSide } from '$lib/layout/place.ts';
import { triangleOf } from '$lib/layout/triangle.ts';
import { demoProject } from '$lib/project/demo.ts';
import { checkProject } from '$lib/project/parse.ts';
import type { Layout, Project } from '$lib/project/project.ts';
import { solve } from '$lib/solution/solve.ts';
import { faultLine } from '$lib/project/fault.ts';
import { medianTime, seeded, type Measured } from './measure.ts';

const DESKS = 64;

type Desk = readonly [Project, Layout];

/** Desks that differ in seat, marks and lift, so that no two runs are alike. */
function desks(): readonly Desk[] {
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

/** What a drag needs of the geometry: both loudspeakers aimed, and the triangle that they make with the head. */
function benchGeometry(): Measured {
  const run = ([{ speaker }, layout]: Desk): number => {
    const [left, right] = [placeSide(speaker, layout, 'left'), placeSide(speaker, layout, 'right')];
    if (!left.ok || !right.ok) throw new Error('a benchmark desk has no answer');
    const head = headOf(layout.listener, layout.desk);
    return right.value.tilt + triangleOf(left.value.aimedPoint, right.value.aimedPoint, head).angle;
  };
  return measured('geometry: aims and triangle', 0.2, run);
}

/** A plan with its stands, without reflections, sound and sheets. */
function benchStands(): Measured {
  const run = ([project, layout]: Desk): number => {
    const planned = solve(project, layout);
    if (!planned.ok) throw new Error(planned.faults.map(faultLine).join('; '));
    return planned.value.sides.right.tilt;
  };
  return measured('plan, without sheets', null, run);
}

function measured(name: string, limit: number | null, run: (desk: Desk) => number): Measured {
  const all = desks();
  let sum = 0;
  let turn = 0;
  const one = (): void => {
    const desk = all[turn++ % DESKS];
    if (desk) sum += run(desk);
  };
  for (let i = 0; i < DESKS; i++) one();
  const checksum = sum.toFixed(6);
  return { name, median: medianTime(one, 60, DESKS), limit, checksum };
}

export const benchPlan = (): readonly Measured[] => [benchGeometry(), benchStands()];
