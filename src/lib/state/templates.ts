import type { Crossover, Driver, Monitor, Project, Stock } from '$lib/project/project.ts';
import { freeName } from './freeName.ts';

/** What an added entry starts as: something sound, in a plausible place, under a name that nothing else has. */

/** A small driver in the middle of the baffle. */
export function newDriver({ drivers, width, height }: Project['speaker']): Driver {
  const diameter = Math.max(3, Math.round(Math.min(width, height) / 4));
  return {
    name: freeName('driver', drivers),
    role: 'midrange',
    diameter,
    radiating: null,
    height: Math.round(height / 2),
    offset: 0,
    acousticDepth: 0,
  };
}

/** Between the first two drivers; null where there is only one. */
export function newCrossover({ drivers }: Project['speaker']): Crossover | null {
  const [upper, lower] = drivers;
  if (upper === undefined || lower === undefined) return null;
  return { between: [upper.name, lower.name], frequency: 2500, alignment: 'in-phase' };
}

/** A common panel, standing at the desk's back edge or behind the last one. */
export function newMonitor({ desk }: Project['layouts'][number]): Monitor {
  return { x: 0, y: Math.round(desk.depth * 0.75), width: 540, height: 330, bottom: 100, depth: 40 };
}

/** As the last board, which is what a shop mostly has more of. */
export function newStock(stock: Project['stock']): Stock {
  const like = stock.at(-1);
  return {
    name: freeName('board', stock),
    thickness: like?.thickness ?? 3,
    sheet: like?.sheet ?? { width: 600, height: 400 },
    density: like?.density ?? 750,
    kerf: null,
    taper: null,
    feed: null,
    price: null,
    solidPrice: null,
    grain: 'none',
    sheets: null,
    offcuts: [],
  };
}
