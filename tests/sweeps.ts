import { checkProject } from '$lib/project/parse.ts';
import type { Layout, Project } from '$lib/project/project.ts';
import { solve } from '$lib/solution/solve.ts';
import type { Plan } from '$lib/solution/document.ts';
import { demoWith } from './projects.ts';

/** Documents that go through a whole range, case by case, each with what it was made from. */
export type Sweep = readonly { readonly name: string; readonly document: () => unknown }[];

/** What a sweep came to. */
export interface Swept {
  readonly planned: number;
  /** Pointers of the faults, and how often each. */
  readonly refused: Readonly<Record<string, number>>;
}

/** Plans every case, `every`-th by `every`-th; `look` is asked about each plan. */
export function sweep(cases: Sweep, every: number, look: (plan: Plan, name: string) => void): Swept {
  const refused: Record<string, number> = {};
  let planned = 0;
  for (let i = 0; i < cases.length; i += every) {
    const one = cases[i];
    const [project, layout] = read(one?.document());
    const outcome = solve(project, layout);
    if (outcome.ok) {
      planned++;
      look(outcome.value, one?.name ?? '');
    } else for (const { pointer } of outcome.faults) refused[pointer] = (refused[pointer] ?? 0) + 1;
  }
  return { planned, refused };
}

function read(document: unknown): readonly [Project, Layout] {
  const result = checkProject(document);
  const layout = result.ok ? result.value.layouts[0] : undefined;
  if (!result.ok || !layout) throw new Error('a case of a sweep is not sound');
  return [result.value, layout];
}

const steps = (from: number, to: number, step: number): number[] =>
  Array.from({ length: Math.round((to - from) / step) + 1 }, (_, i) => from + i * step);

/** Ribs with a top and front skin, ends square to the slope: 6,912. Without the cabinet's mass, remedies try other lifts. */
export const ribsWithSkin: Sweep = steps(20, 250, 10).flatMap((lift) =>
  steps(1000, 1300, 20).flatMap((earHeight) =>
    [3, 4, 6, 9, 12, 18].flatMap((skin) =>
      [3, 9, 18].map((rib) => ({
        name: `lift ${lift}, ear ${earHeight}, skin ${skin}, rib ${rib}`,
        document: () =>
          demoWith({
            '/speaker/mass': null,
            '/stock': [
              { name: 'rib', thickness: rib, sheet: { width: 1200, height: 800 } },
              { name: 'skin', thickness: skin, sheet: { width: 1200, height: 800 } },
            ],
            '/layouts/0/listener/earHeight': earHeight,
            '/layouts/0/stand': { lift, build: 'ribbed', ends: 'square', ribs: { skin: 'skin' } },
          }),
      })),
    ),
  ),
);

/** Relief windows behind rounded outer corners: 1,344. */
export const reliefWithCorners: Sweep = [12, 20, 30, 40, 60, 80, 120].flatMap((lift) =>
  [1, 2, 3, 4, 6, 8, 10, 14].flatMap((web) =>
    [1, 3, 5, 10, 20, 30, 40, 60].flatMap((corner) =>
      [1100, 1180, 1260].map((earHeight) => ({
        name: `lift ${lift}, web ${web}, corner ${corner}, ear ${earHeight}`,
        document: () =>
          demoWith({
            '/layouts/0/listener/earHeight': earHeight,
            '/layouts/0/stand': { lift, build: 'stacked', corner, relief: { web } },
          }),
      })),
    ),
  ),
);

/** Recesses in top and base with narrow and wide borders: 528. */
export const recessWithBorder: Sweep = [0, 0.2, 0.5, 1, 1.5, 2, 3, 4, 5, 8, 12].flatMap((border) =>
  [0.5, 1, 1.5, 2, 3, 4].flatMap((depth) =>
    (['top', 'base'] as const).flatMap((face) =>
      [null, 2, 5, 10].map((corner) => ({
        name: `border ${border}, depth ${depth}, ${face}, corner ${corner}`,
        document: () =>
          demoWith({ '/layouts/0/stand': { lift: 25, build: 'stacked', corner, recess: { face, depth, border } } }),
      })),
    ),
  ),
);
