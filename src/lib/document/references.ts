import { pointerTo } from '$lib/project/fault.ts';
import { sideNames } from '$lib/project/project.ts';
import { listAt, valueAt } from './pointer.ts';

/** Names by which one part of a document speaks of another: renaming and removing an entry must take them along. */

/** Pointers of all that speaks of the entry whose name is at the pointer; empty for a name that nothing speaks of. */
export function referencesTo(document: unknown, pointer: string): readonly string[] {
  const places = /^\/speaker\/drivers\/\d+\/name$/.test(pointer)
    ? driverPlaces(document)
    : /^\/stock\/\d+\/name$/.test(pointer)
      ? stockPlaces.flatMap((steps) => layoutPlaces(document, ['stand', ...steps]))
      : (posturePlaces(document, pointer) ?? carrierPlaces(pointer));
  const name = valueAt(document, pointer);
  return typeof name === 'string' ? places.filter((place) => valueAt(document, place) === name) : [];
}

/** Every pointer at which the aim of a posture's layout may name it; null where the pointer is not that of its name. */
function posturePlaces(document: unknown, pointer: string): readonly string[] | null {
  const [, layout] = /^(\/layouts\/\d+)\/listener\/postures\/\d+\/name$/.exec(pointer) ?? [];
  if (layout === undefined) return null;
  const served = servedAt(layout);
  return listAt(document, served).map((_, index) => served + pointerTo(index));
}

/** Where a layout says what its loudspeakers stand on; none where the pointer is not that of a surface's name. */
function carrierPlaces(pointer: string): readonly string[] {
  const [, layout] = /^(\/layouts\/\d+)\/surfaces\/\d+\/name$/.exec(pointer) ?? [];
  return layout === undefined ? [] : sideNames.map((side) => layout + pointerTo('placement', side, 'on'));
}

/** Where a layout names the postures that its aim serves beside the seat. */
export const servedAt = (layout: string): string => `${layout}/aim/over/postures`;

/** Where in a stand a stock may be named. */
const stockPlaces = [['stock'], ['cheeks', 'stock'], ['ribs', 'skin']] as const;

/** Of the driver on whose axis the design point lies. */
export const DESIGN_DRIVER = '/speaker/designPoint/driver';

/** Every pointer at which a driver's name may stand. */
function driverPlaces(document: unknown): readonly string[] {
  const crossovers = listAt(document, '/speaker/crossovers').flatMap((_, index) =>
    [0, 1].map((end) => pointerTo('speaker', 'crossovers', index, 'between', end)),
  );
  const aims = [['through'], ['through', 'between', 0], ['through', 'between', 1]] as const;
  return [...crossovers, DESIGN_DRIVER, ...aims.flatMap((steps) => layoutPlaces(document, ['aim', ...steps]))];
}

/** Pointers of a value in every layout. */
export const layoutPlaces = (document: unknown, steps: readonly (string | number)[]): readonly string[] =>
  listAt(document, '/layouts').map((_, index) => pointerTo('layouts', index, ...steps));
