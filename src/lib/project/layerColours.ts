import { colours } from './fields/machines.ts';
import { startOf } from './fields/starts.ts';
import type { LayerColours } from './project.ts';

/** The layers of cut files where a project names no colours of its own. */
export const layerColours: LayerColours = startOf(colours);
