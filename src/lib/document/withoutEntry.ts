import { pointerTo } from '$lib/project/fault.ts';
import { DESK } from '$lib/project/surface.ts';
import { listAt, valueAt, withoutValue, withValue } from './pointer.ts';
import { DESIGN_DRIVER, layoutPlaces, referencesTo, servedAt } from './references.ts';

const DESIGN_POINT = '/speaker/designPoint';

/**
 * The document without one driver: crossovers that meet in it and a design point on its axis go with it, and an axis through
 * it moves to the first driver that is left.
 */
export function withoutDriver(document: unknown, index: number): unknown {
  const own = pointerTo('speaker', 'drivers', index);
  const name = valueAt(document, `${own}/name`);
  const rest = withoutValue(document, own);
  const left = valueAt(rest, DESIGN_DRIVER) === name ? withValue(rest, DESIGN_POINT, { rule: 'none' }) : rest;
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

/** The document without one posture of a layout (a pointer): an aim that names it serves those that are left. */
export function withoutPosture(document: unknown, layout: string, index: number): unknown {
  const own = layout + pointerTo('listener', 'postures', index);
  const name = valueAt(document, `${own}/name`);
  const rest = withoutValue(document, own);
  const named = listAt(rest, servedAt(layout));
  return named.includes(name)
    ? withValue(
        rest,
        servedAt(layout),
        named.filter((one) => one !== name),
      )
    : rest;
}

/** The document without one surface of a layout (a pointer): a loudspeaker on it goes to the desk. */
export function withoutSurface(document: unknown, layout: string, index: number): unknown {
  const own = layout + pointerTo('surfaces', index);
  return referencesTo(document, `${own}/name`).reduce(
    (done, place) => withValue(done, place, DESK),
    withoutValue(document, own),
  );
}
