import { supplyBuilders } from './builders.ts';
import { buildRibbed } from './builds/ribbed.ts';
import { buildSkinned } from './builds/skinned.ts';
import { buildSolid } from './builds/solid.ts';

/** Imported for what it does: from here on every stand can be built. A page fetches it with what reads projects. */
supplyBuilders({ skinned: buildSkinned, ribbed: buildRibbed, solid: buildSolid });
