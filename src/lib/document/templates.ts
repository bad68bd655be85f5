import { deskShape } from '$lib/project/deskShape.ts';
import { monitor } from '$lib/project/fields/desk.ts';
import { crossover, driver } from '$lib/project/fields/speaker.ts';
import { startOf } from '$lib/project/fields/starts.ts';
import { stock as stockFields } from '$lib/project/fields/stock.ts';
import type { Crossover, Driver, Monitor, Project, Stock } from '$lib/project/project.ts';
import { freeName } from './freeName.ts';

/**
 * What an added entry starts as: something sound, in a plausible place, under a name that nothing else has, and nothing of it
 * measured yet.
 */

/** A small driver in the middle of the baffle. */
export function newDriver({ drivers, width, height }: Project['speaker']): Driver {
  const diameter = Math.max(driver.diameter.min, Math.round(Math.min(width, height) / 4));
  return {
    ...startOf(driver),
    name: freeName('driver', drivers),
    role: 'midrange',
    diameter,
    height: Math.round(height / 2),
    entered: [],
  };
}

/** Between the first two drivers; null where there is only one. */
export function newCrossover({ drivers }: Project['speaker']): Crossover | null {
  const [upper, lower] = drivers;
  if (upper === undefined || lower === undefined) return null;
  return { ...startOf(crossover), between: [upper.name, lower.name], entered: [] };
}

/** A common panel, standing at the desk's back edge or behind the last one. */
export function newMonitor({ desk }: Project['layouts'][number]): Monitor {
  return { ...startOf(monitor), y: Math.round(deskShape(desk).depth * 0.75), entered: [] };
}

/** So many screens: those that there are, the first of them, and new ones beside each other. */
export function newMonitors(layout: Project['layouts'][number], count: number): readonly Monitor[] {
  const fresh = newMonitor(layout);
  const beside = (index: number): number => Math.round((index - (count - 1) / 2) * fresh.width);
  return Array.from({ length: count }, (_, index) => layout.monitors[index] ?? { ...fresh, x: beside(index) });
}

/** As the last board, which is what a shop mostly has more of. */
export function newStock(stock: Project['stock']): Stock {
  const plain = startOf(stockFields);
  const { thickness, sheet, density } = stock.at(-1) ?? plain;
  return { ...plain, name: freeName('board', stock), thickness, sheet, density, offcuts: [], entered: [] };
}
