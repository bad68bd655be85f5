import type { LayerColours } from './project.ts';

/**
 * The layers of cut files where a project names no colours of its own: no pure red, blue or black, which the drivers of
 * machines give meanings to. Each stands out by 3:1 or more on white and on black (WCAG 2.2, 1.4.11), and no two are equally
 * light, so that they differ in grey too.
 */
export const layerColours: LayerColours = { outside: '#8038c2', inside: '#0c7a80', mark: '#b9771f' };
