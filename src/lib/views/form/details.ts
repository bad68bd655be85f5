import type { StandSettings } from '$lib/project/project.ts';
import type { BuildDetail } from '$lib/stand/builds/build.ts';
import { builds } from '$lib/stand/builds/builds.ts';

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

const all: readonly BuildDetail[] = ['rods', 'relief', 'cheeks', 'pockets', 'ribs'];

/** The details that a build has a use for; all of them for a build that is none, so that nothing typed is hidden. */
export function detailsOf(build: unknown): { readonly uses: ReadonlySet<BuildDetail>; readonly first: Firsts } {
  return { uses: new Set(builds.find(({ name }) => name === build)?.details ?? all), first };
}
