import type { BuildName } from '$lib/stand/body.ts';
import type { Build } from './build.ts';
import { ribbed } from './ribbed.ts';
import { skinned } from './skinned.ts';
import { solid } from './solid.ts';
import { stacked } from './stacked.ts';

const byName: Readonly<Record<BuildName, Build>> = { stacked, skinned, ribbed, solid };

/** Every way to build a stand, in the order in which they are offered. */
export const builds: readonly Build[] = Object.values(byName);

export const buildNamed = (name: BuildName): Build => byName[name];
