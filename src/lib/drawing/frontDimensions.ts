import type { Point } from '$lib/geometry/point.ts';
import { baffleLength } from '$lib/project/cabinet.ts';
import { pointerTo } from '$lib/project/fault.ts';
import type { StoodSpeaker } from '$lib/project/stood.ts';
import { diameter } from './diameter.ts';
import { CENTRE_BEYOND, type FrontDriver } from './frontDrivers.ts';
import { linear } from './makeDimension.ts';
import type { Dimension } from './view.ts';

/** Everything with a number on the front view. `aimed`: the aimed point, where it is no driver's centre; else null. */
export function frontDimensions(
  speaker: StoodSpeaker,
  drivers: readonly FrontDriver[],
  aimed: Point | null,
): Dimension[] {
  const offsets = offsetDimensions(speaker, drivers);
  const diameters = diameterDimensions(speaker, drivers);
  const heights = heightDimensions(speaker, drivers);
  const right = Math.max(0, ...diameters.map(({ row }) => row));
  return [
    ...heights,
    ...offsets,
    ...diameters,
    ...aimedHeight(speaker, aimed, right + 1),
    widthDimension(speaker, offsets.length + 1),
    lengthDimension(speaker, right + (aimed ? 2 : 1)),
  ];
}

/** From the front bottom edge to each centre, the lowest nearest to the cabinet, left of it. */
function heightDimensions({ width, drivers: sizes, laid }: StoodSpeaker, drivers: readonly FrontDriver[]): Dimension[] {
  return drivers
    .map((driver, index) => ({ ...driver, index, value: sizes[index]?.height ?? 0 }))
    .sort((a, b) => a.centre[1] - b.centre[1])
    .map(({ name, centre, radius, index, value }, place) =>
      linear({
        id: `driver-${index}-height`,
        subject: 'driver',
        from: [-width / 2, 0],
        to: [centre[0] - radius - CENTRE_BEYOND, centre[1]],
        run: 'up',
        row: -1 - place,
        value,
        name: `${name}, centre over the front bottom edge`,
        ...(laid ? {} : { input: pointerTo('speaker', 'drivers', index, 'height') }),
      }),
    );
}

/** From the middle of the baffle to centres beside it, over the cabinet. */
function offsetDimensions(speaker: StoodSpeaker, drivers: readonly FrontDriver[]): Dimension[] {
  const top = baffleLength(speaker);
  return drivers
    .map((driver, index) => ({ ...driver, index, offset: speaker.drivers[index]?.offset ?? 0 }))
    .filter(({ offset }) => offset !== 0)
    .sort((a, b) => Math.abs(a.offset) - Math.abs(b.offset))
    .map(({ name, centre, radius, index, offset }, place) =>
      linear({
        id: `driver-${index}-offset`,
        subject: 'driver',
        from: [0, top + CENTRE_BEYOND],
        to: [centre[0], centre[1] + radius + CENTRE_BEYOND],
        run: 'across',
        row: 1 + place,
        value: Math.abs(offset),
        name: `${name}, centre from the middle of the baffle`,
        ...(speaker.laid
          ? {}
          : { input: pointerTo('speaker', 'drivers', index, 'offset'), inputSign: offset < 0 ? -1 : 1 }),
      }),
    );
}

/** From rim to rim, right of the cabinet; drivers at one height in rows of their own. */
function diameterDimensions({ drivers: sizes }: StoodSpeaker, drivers: readonly FrontDriver[]): Dimension[] {
  const rows: FrontDriver[][] = [];
  return drivers.map((driver, index) => {
    const free = rows.findIndex((row) => row.every((other) => apart(driver, other)));
    const row = free < 0 ? rows.length : free;
    rows[row] = [...(rows[row] ?? []), driver];
    const highest = drivers.every(({ centre }) => centre[1] <= driver.centre[1]);
    const [x, y] = driver.centre;
    return diameter(
      linear({
        id: `driver-${index}-diameter`,
        subject: 'driver',
        from: [x, y - driver.radius],
        to: [x, y + driver.radius],
        run: 'up',
        row: 1 + row,
        // Where there is no room between the rims the numbers keep out of each other's way.
        beside: highest ? 'to' : 'from',
        value: sizes[index]?.diameter ?? 0,
        name: `${driver.name}, diameter`,
        rank: 2,
        input: pointerTo('speaker', 'drivers', index, 'diameter'),
      }),
    );
  });
}

const apart = (a: FrontDriver, b: FrontDriver): boolean => Math.abs(a.centre[1] - b.centre[1]) >= a.radius + b.radius;

/** A result: drivers stand at both its ends. */
function aimedHeight({ width }: StoodSpeaker, aimed: Point | null, row: number): Dimension[] {
  if (!aimed) return [];
  return [
    linear({
      id: 'aimed-height',
      subject: 'axis',
      from: [width / 2, 0],
      to: [aimed[0] + CENTRE_BEYOND, aimed[1]],
      run: 'up',
      row,
      value: aimed[1],
      name: 'aimed point over the front bottom edge',
    }),
  ];
}

const widthDimension = (speaker: StoodSpeaker, row: number): Dimension =>
  linear({
    id: 'speaker-width',
    subject: 'cabinet',
    from: [-speaker.width / 2, baffleLength(speaker)],
    to: [speaker.width / 2, baffleLength(speaker)],
    run: 'across',
    row,
    value: speaker.width,
    ...widthSays(speaker),
  });

/** What a width from above or in front is called, and what it is typed into: of a cabinet on its side its height. */
export function widthSays({ laid }: StoodSpeaker) {
  if (!laid) return { name: 'loudspeaker width', input: '/speaker/width' };
  return laid.square
    ? { name: 'loudspeaker height, on its side', input: '/speaker/height' }
    : { name: 'length of the baffle' };
}

function lengthSays({ laid, baffleRake }: StoodSpeaker) {
  if (laid) return { name: 'loudspeaker width, on its side', input: '/speaker/width' };
  return baffleRake === 0 ? { name: 'loudspeaker height', input: '/speaker/height' } : { name: 'length of the baffle' };
}

/** The baffle from bottom to top: a result where it leans, the cabinet's height where it does not. */
const lengthDimension = (speaker: StoodSpeaker, row: number): Dimension =>
  linear({
    id: 'baffle-length',
    subject: 'cabinet',
    from: [speaker.width / 2, 0],
    to: [speaker.width / 2, baffleLength(speaker)],
    run: 'up',
    row,
    value: baffleLength(speaker),
    ...lengthSays(speaker),
  });
