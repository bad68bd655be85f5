import type { TermKey } from '$lib/project/fields/termKey.ts';

/** The term that a row of the results is about, by its name. */
const ofRows: ReadonlyMap<string, TermKey> = new Map([
  ['Toe', 'toe'],
  ['Tilt', 'tilt'],
  ['Lift', 'lift'],
  ['Axis elevation', 'axis'],
  ['Aimed point over desk', 'aimed-point'],
  ['Miss at the head', 'miss'],
  ['Angle at the head', 'triangle'],
  ['Slices', 'slice'],
  ['Rod-hole edge distance', 'rods'],
  ['Path difference, lower − upper', 'acoustic-depth'],
  ['Phase', 'phase'],
  ['Sum at the crossover', 'meeting'],
  ['Hits the surface', 'reflection'],
  ['First notch', 'notch'],
]);

/** The term that a row of the results is about; undefined where its name says enough. */
export const termOfRow = (name: string): TermKey | undefined => ofRows.get(name);
