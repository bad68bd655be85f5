import { contourLength } from '$lib/geometry/contourLength.ts';
import type { Printer, Stock } from '$lib/project/project.ts';
import type { Printed } from '$lib/stand/body.ts';
import { engravingOf } from '$lib/workshop/lettering/engraving.ts';
import type { Part } from './part.ts';

/** A number nobody has measured: what it comes to, or what is missing to say so. */
export interface Estimate {
  readonly value: number | null;
  /** What is not known, in words; empty when the value is there. */
  readonly missing: readonly string[];
}

/** Estimates, and to be shown as such. Minutes, kg, and money in whatever the prices are in. */
export interface Estimates {
  /** With the beam on: moves between cuts, piercing and handling are left out. */
  readonly cutMinutes: Estimate;
  readonly printMinutes: Estimate;
  /** Sheets and blanks of solid wood as bought, and filament. Veneer, glue and feet are left out. */
  readonly cost: Estimate;
  /** Of the plastic. */
  readonly printMass: number;
}

/** What there is to do. */
export interface Work {
  readonly parts: readonly Part[];
  readonly printed: readonly Printed[];
  /** Sheets of each stock, by its name; null when nobody has counted them. */
  readonly sheets: Readonly<Record<string, number>> | null;
  /** Solid wood of each stock, by its name, as bought, mm³. Left out where there is none. */
  readonly solidWood?: Readonly<Record<string, number>>;
}

const SECONDS = 60;
const CUBIC_MM_IN_CUBIC_M = 1e9;

/** Time and cost from speeds and prices, where the project has them. */
export function estimate(work: Work, stocks: readonly Stock[], printer: Printer): Estimates {
  const { parts, printed } = work;
  const volume = printed.reduce((sum, body) => sum + body.volume * body.quantity, 0);
  const printMass = printed.reduce((sum, body) => sum + body.mass * body.quantity, 0);
  return {
    cutMinutes: total(parts.flatMap((part) => cutTimes(part, stocks))),
    printMinutes: total(
      volume === 0 ? [] : [{ amount: volume * printer.fill, per: printer.rate, what: 'the printer’s rate' }],
      SECONDS,
    ),
    cost: costOf(work, stocks, printer, printMass),
    printMass,
  };
}

interface Share {
  readonly amount: number;
  /** Units of the amount for each unit of the result; null when not known. */
  readonly per: number | null;
  readonly what: string;
}

/** Amounts over their rates, summed; null as soon as one rate is missing. */
function total(shares: readonly Share[], over = 1): Estimate {
  const missing = [...new Set(shares.filter(({ amount, per }) => amount > 0 && per === null).map(({ what }) => what))];
  if (missing.length > 0) return { value: null, missing };
  return { value: shares.reduce((sum, { amount, per }) => sum + (per === null ? 0 : amount / per), 0) / over, missing };
}

function cutTimes(part: Part, stocks: readonly Stock[]): Share[] {
  const feed = stocks.find(({ name }) => name === part.stock)?.feed ?? null;
  const layers = { outside: [part.outside], inside: part.inside, mark: engravingOf(part) };
  return (['outside', 'inside', 'mark'] as const).map((layer) => {
    const length = layers[layer].reduce((sum, contour) => sum + contourLength(contour), 0) * part.quantity;
    const speed = feed?.[layer] ?? null;
    return {
      amount: length,
      per: speed === null ? null : speed * SECONDS,
      what: `the speed of the ${layer === 'mark' ? 'engrave' : layer} layer in "${part.stock}"`,
    };
  });
}

function costOf(
  { parts, printed, sheets, solidWood = {} }: Work,
  stocks: readonly Stock[],
  printer: Printer,
  printMass: number,
): Estimate {
  if (parts.length > 0 && sheets === null) return { value: null, missing: ['the number of sheets'] };
  const boards = stocks.map(({ name, price }) => ({
    count: sheets?.[name] ?? 0,
    price,
    what: `the price of a sheet of "${name}"`,
  }));
  const blanks = stocks.map(({ name, solidPrice }) => ({
    count: (solidWood[name] ?? 0) / CUBIC_MM_IN_CUBIC_M,
    price: solidPrice,
    what: `the price of a cubic metre of "${name}", solid`,
  }));
  const filament = { count: printed.length > 0 ? printMass : 0, price: printer.price, what: 'the price of filament' };
  const bought = [...boards, ...blanks, filament].filter(({ count }) => count > 0);
  const missing = bought.filter(({ price }) => price === null).map(({ what }) => what);
  if (missing.length > 0) return { value: null, missing };
  return { value: bought.reduce((sum, { count, price }) => sum + count * (price ?? 0), 0), missing };
}
