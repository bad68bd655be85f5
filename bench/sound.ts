import { demoProject } from '$lib/project/demo.ts';
import { checkProject } from '$lib/project/parse.ts';
import type { Layout, Project } from '$lib/project/project.ts';
import { solve } from '$lib/solution/solve.ts';
import { soundOf } from '$lib/solution/sound.ts';
import { faultLine } from '$lib/project/fault.ts';
import { medianTime, seeded, type Measured } from './measure.ts';

const ROOMS = 32;

/** Desks in rooms with every surface there, so that six ways lead from each driver, and one with a design point. */
function rooms(): readonly (readonly [Project, Layout])[] {
  const next = seeded(20260202);
  return Array.from({ length: ROOMS }, () => {
    const document = structuredClone(demoProject) as unknown as {
      speaker: Record<string, unknown>;
      layouts: [Record<string, unknown>];
    };
    const [layout] = document.layouts;
    document.speaker.designPoint = { driver: 'tweeter', distance: 800 + 1200 * next() };
    const side = (name: string, bearing: number) => ({ name, bearing, distance: 1200 + 800 * next() });
    layout.room = {
      walls: [{ name: 'behind', bearing: 0, distance: 820 }, side('left', -90), side('right', 90)],
      ceiling: { height: 2300 + 300 * next() },
    };
    layout.listener = { setback: 100 + 300 * next(), earHeight: 1100 + 150 * next(), offset: 60 * next() - 30 };
    const parsed = checkProject(document);
    if (!parsed.ok || !parsed.value.layouts[0]) throw new Error('a benchmark room is not sound');
    return [parsed.value, parsed.value.layouts[0]] as const;
  });
}

/** A whole plan with the response: 480 frequencies, 2 sides, 6 ways, 2 drivers. */
export function benchSound(): Measured {
  const all = rooms();
  let sum = 0;
  let turn = 0;
  const run = (): void => {
    const [project, layout] = all[turn++ % ROOMS] ?? all[0] ?? [];
    if (!project || !layout) return;
    const planned = solve(project, layout);
    if (!planned.ok) throw new Error(planned.faults.map(faultLine).join('; '));
    const { both, sides } = soundOf(project, layout, planned.value);
    sum += (both.smooth[200] ?? NaN) + both.notches.length + (sides.left.response.fine[300] ?? NaN);
  };
  for (let i = 0; i < ROOMS; i++) run();
  const checksum = sum.toFixed(6);
  return { name: 'plan and sound at the head', median: medianTime(run, 40, ROOMS), limit: 6, checksum };
}
