import type { Point } from '$lib/geometry/point.ts';
import { pointerTo } from '$lib/project/fault.ts';
import { driver as driverFields } from '$lib/project/fields/speaker.ts';
import { ellipse } from './curve.ts';
import { frontDrivers } from './frontDrivers.ts';
import type { Handle } from './handle.ts';
import type { SheetSource } from './sheetSource.ts';

/** The drivers on the front of one upright cabinet: up and down the baffle, and off its middle. */
export function frontHandles({ project: { speaker }, plan, side }: SheetSource): Handle[] {
  if (speaker.lying !== 'upright') return [];
  // Inboard lies to the left of whoever faces the right cabinet; a pair that is the same has it so on both.
  const inboard = side === 'left' && speaker.mirrored ? 1 : -1;
  return frontDrivers(speaker, plan.sides[side]).map(({ name, centre, radius }, index): Handle => {
    const at = (key: string): string => pointerTo('speaker', 'drivers', index, key);
    const { height = 0, offset = 0 } = speaker.drivers[index] ?? {};
    const others = speaker.drivers.filter((_, other) => other !== index);
    return {
      id: `handle-driver-${index}`,
      thing: `driver-${index}`,
      name,
      at: centre,
      across: {
        input: at('offset'),
        value: offset,
        rate: inboard,
        range: driverFields.offset,
        says: offset < 0 ? 'outboard of the middle' : 'inboard of the middle',
        sign: offset < 0 ? -1 : 1,
        align: [0, ...others.map((driver) => driver.offset)],
      },
      up: {
        input: at('height'),
        value: height,
        rate: 1,
        range: driverFields.height,
        says: 'up the baffle',
        sign: 1,
        align: others.map((driver) => driver.height),
      },
      body: rimOf(centre, radius),
    };
  });
}

const rimOf = (centre: Point, radius: number): Point[] => ellipse(centre, radius, radius, 36);
