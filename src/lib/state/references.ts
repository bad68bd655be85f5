import { pointerTo } from '$lib/project/fault.ts';
import { listAt, valueAt, withoutValue, withValue } from './pointer.ts';

/** Names by which one part of a document speaks of another: renaming and removing an entry must take them along. */

/** Pointers of all that speaks of the entry whose name is at the pointer; empty for a name that nothing speaks of. */
export function referencesTo(document: unknown, pointer: string): readonly string[] {
  const places = /^\/speaker\/drivers\/\d+\/name$/.test(pointer)
    ? driverPlaces(document)
    : /^\/stock\/\d+\/name$/.test(pointer)
      ? stockPlaces.flatMap((steps) => layoutPlaces(document, ['stand', ...steps]))
      : [];
  const name = valueAt(document, pointer);
  return typeof name === 'string' ? places.filter((place) => valueAt(document, place) === name) : [];
}

/** Where in a stand a stock may be named. */
const stockPlaces = [['stock'], ['cheeks', 'stock'], ['ribs', 'skin']] as const;

const DESIGN_POINT = '/speaker/designPoint';
const DESIGN_DRIVER = `${DESIGN_POINT}/driver`;

/** Every pointer at which a driver's name may stand. */
function driverPlaces(document: unknown): readonly string[] {
  const crossovers = listAt(document, '/speaker/crossovers').flatMap((_, index) =>
    [0, 1].map((end) => pointerTo('speaker', 'crossovers', index, 'between', end)),
  );
  const aims = [['through'], ['through', 'between', 0], ['through', 'between', 1]] as const;
  return [...crossovers, DESIGN_DRIVER, ...aims.flatMap((steps) => layoutPlaces(document, ['aim', ...steps]))];
}

const layoutPlaces = (document: unknown, steps: readonly (string | number)[]): readonly string[] =>
  listAt(document, '/layouts').map((_, index) => pointerTo('layouts', index, ...steps));

/**
 * The document without one driver: crossovers that meet in it and a design point on its axis go with it, and an axis through
 * it moves to the first driver that is left.
 */
export function withoutDriver(document: unknown, index: number): unknown {
  const own = pointerTo('speaker', 'drivers', index);
  const name = valueAt(document, `${own}/name`);
  const rest = withoutValue(document, own);
  const left = valueAt(rest, DESIGN_DRIVER) === name ? withValue(rest, DESIGN_POINT, null) : rest;
  const crossovers = listAt(left, '/speaker/crossovers').filter(
    (_, at) => !listAt(left, pointerTo('speaker', 'crossovers', at, 'between')).includes(name),
  );
  const first = valueAt(left, '/speaker/drivers/0/name');
  return layoutPlaces(left, ['aim', 'through'])
    .filter((place) => valueAt(left, place) === name || listAt(left, `${place}/between`).includes(name))
    .reduce((done, place) => withValue(done, place, first), withValue(left, '/speaker/crossovers', crossovers));
}

/** The document without one stock: stands made of it take the first stock that is left, skins of it are left out. */
export function withoutStock(document: unknown, index: number): unknown {
  const own = pointerTo('stock', index);
  return referencesTo(document, `${own}/name`).reduce(
    (done, place) => withValue(done, place, null),
    withoutValue(document, own),
  );
}
