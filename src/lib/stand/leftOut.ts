import type { StandSettings } from '$lib/project/project.ts';
import type { Build } from './builds/build.ts';
import { builds } from './builds/builds.ts';

/** What is said to be left out; rods are not, for every stand has them until they are taken away. */
const details = { relief: 'Relief windows', cheeks: 'Cheeks', ribs: 'Ribs', pockets: 'Pockets' } as const;
const names = ['relief', 'cheeks', 'ribs', 'pockets'] as const satisfies readonly (keyof typeof details)[];

/** A sentence for each detail that the settings ask for and the build has no use for. */
export const leftOut = (settings: StandSettings, build: Build): readonly string[] =>
  names
    .filter((name) => settings[name] !== null && !build.details.includes(name))
    .map((name) => `${details[name]} are for ${buildsWith(name)} build: left out.`);

const buildsWith = (detail: (typeof names)[number]): string =>
  builds
    .filter((build) => build.details.includes(detail))
    .map(({ name }) => `the ${name}`)
    .join(' and ');
