import type { StandSettings } from '$lib/project/project.ts';

/** What each detail is called, and where it has its place. */
const details = {
  ribs: 'Ribs are for the ribbed build',
  pockets: 'Pockets are for the printed core of the skinned build',
  relief: 'Relief windows are for the stacked and the skinned build',
  cheeks: 'Cheeks are for the stacked and the skinned build',
} as const satisfies Partial<Record<keyof StandSettings, string>>;

/** A sentence for each detail that the settings ask for and a build has no use for. */
export const leftOut = (settings: StandSettings, unused: readonly (keyof typeof details)[]): readonly string[] =>
  unused.filter((name) => settings[name] !== null).map((name) => `${details[name]}: left out.`);
