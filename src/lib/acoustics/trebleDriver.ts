import type { PlacedDriver } from '$lib/layout/pose.ts';
import type { Driver } from '$lib/project/project.ts';
import { pistonRadius } from './piston.ts';

const order = { tweeter: 0, 'full-range': 1, midrange: 2, woofer: 3 } as const;

const higherFirst = (a: Driver, b: Driver): number =>
  order[a.role] - order[b.role] || pistonRadius(a) - pistonRadius(b);

/** The driver that plays the treble: the one with the highest role, the smallest of several. */
export const trebleDriver = (drivers: readonly Driver[]): Driver => firstOf([...drivers].sort(higherFirst));

/** The same of drivers in their places. */
export const placedTreble = (drivers: readonly PlacedDriver[]): PlacedDriver =>
  firstOf([...drivers].sort((a, b) => higherFirst(a.driver, b.driver)));

function firstOf<Item>([first]: readonly Item[]): Item {
  if (first === undefined) throw new Error('a loudspeaker has at least one driver');
  return first;
}
