import type { StandSettings } from '$lib/project/project.ts';

/** Details that only some builds have a use for. */
export type BuildDetail = 'rods' | 'relief' | 'cheeks' | 'pockets' | 'ribs';

type Firsts = { readonly [Name in BuildDetail | 'cable' | 'recess']: NonNullable<StandSettings[Name]> };

/** What a detail starts as when it is switched on. */
const first: Firsts = {
  rods: { diameter: 6, count: 2, clearance: 0.1, edge: 2 },
  relief: { web: 8, corner: 3 },
  cheeks: { stock: null, count: 1 },
  pockets: { count: 2, diameter: 8, depth: 20 },
  ribs: { count: 2, cross: 3, fit: 0.1, inset: 10, skin: null },
  cable: { width: 10, depth: 6, fromRear: 60 },
  recess: { face: 'base', depth: 0.8, border: 8 },
};

const usedBy: Readonly<Record<StandSettings['build'], readonly BuildDetail[]>> = {
  stacked: ['rods', 'relief', 'cheeks'],
  skinned: ['rods', 'relief', 'cheeks', 'pockets'],
  ribbed: ['ribs'],
  solid: [],
};

/** The details that a build has a use for; all of them for a build that is none, so that nothing typed is hidden. */
export function detailsOf(build: unknown): { readonly uses: ReadonlySet<BuildDetail>; readonly first: Firsts } {
  const named = Object.entries(usedBy).find(([name]) => name === build);
  return { uses: new Set(named ? named[1] : ['rods', 'relief', 'cheeks', 'pockets', 'ribs']), first };
}
