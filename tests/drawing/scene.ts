import { solve } from '$lib/solution/solve.ts';
import type { Plan } from '$lib/solution/document.ts';
import { demoProject } from '$lib/project/demo.ts';
import { checkProject } from '$lib/project/parse.ts';
import type { Layout, Project } from '$lib/project/project.ts';
import { wallAt } from '../rooms.ts';

/** What a demo project differs in. Left and right marks are given from the middle and the front edge. */
export interface Difference {
  readonly left?: { readonly x: number; readonly y: number };
  readonly right?: { readonly x: number; readonly y: number };
  readonly offset?: number;
  readonly earHeight?: number;
  readonly wallGap?: number | null;
  readonly tilt?: { readonly rule: string; readonly degrees: number };
  readonly lift?: number;
  readonly stop?: { readonly height: number; readonly thickness: number };
}

export interface Scene {
  readonly project: Project;
  readonly layout: Layout;
  readonly plan: Plan;
}

/** The demo with differences, planned; null where such a project has no plan. */
export function sceneOrNull({ left, right, offset, earHeight, wallGap, tilt, lift, stop }: Difference): Scene | null {
  const [layout] = demoProject.layouts;
  const given = <Value>(value: Value | undefined, otherwise: Value): Value => (value === undefined ? otherwise : value);
  const gap = given<number | null>(wallGap, layout.room.walls[0].distance - layout.desk.outline.depth);
  const parsed = checkProject({
    ...demoProject,
    layouts: [
      {
        ...layout,
        room: { walls: gap === null ? [] : [wallAt('behind', 0, layout.desk.outline.depth + gap)] },
        listener: {
          ...layout.listener,
          offset: given<number>(offset, 0),
          earHeight: given<number>(earHeight, layout.listener.earHeight),
        },
        placement: { left: left ?? layout.placement.left, right: right ?? layout.placement.right },
        aim: tilt ? { ...layout.aim, tilt } : layout.aim,
        stand: { ...layout.stand, lift: given<number>(lift, layout.stand.lift), ...(stop ? { stop } : {}) },
      },
    ],
  });
  if (!parsed.ok) return null;
  const [first] = parsed.value.layouts;
  if (!first) return null;
  const outcome = solve(parsed.value, first);
  return outcome.ok ? { project: parsed.value, layout: first, plan: outcome.value } : null;
}

/** As above, for differences that are known to have a plan. */
export function scene(difference: Difference = {}): Scene {
  const made = sceneOrNull(difference);
  if (!made) throw new Error('These differences have no plan.');
  return made;
}
