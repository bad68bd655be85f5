import { asFixed, asTyped, bare, joined, needs, onPage, type Quantity, says } from '$lib/project/sentence.ts';
import { FIT, MOST_COPIES } from './rows.ts';
import { pointerTo, type Fault } from '$lib/project/fault.ts';
import type { Cutter, Stock } from '$lib/project/project.ts';
import type { Nestable } from './nestable.ts';
import type { Part, Sheet } from '$lib/workshop/part.ts';

/** What an arrangement needs to know of the cutter. */
export type Spaces = Omit<Cutter, 'colours'>;

/** Two cuts must not eat into each other's part, nor run off the board while the part's edge is still to come. */
export function cutterFaults({ kerf, spacing, margin }: Spaces): Fault[] {
  const faults: Fault[] = [];
  if (spacing < kerf) {
    const message = needs(says`a spacing of at least the kerf of ${asTyped(kerf)}`, asTyped(spacing));
    faults.push({ pointer: '/cutter/spacing', message });
  }
  if (margin < kerf / 2) {
    const message = needs(
      says`a margin of at least ${asTyped(kerf / 2)}, half the kerf of ${asTyped(kerf)}`,
      asTyped(margin),
    );
    faults.push({ pointer: '/cutter/margin', message });
  }
  return faults;
}

export function quantityFaults(parts: readonly Part[], stocks: readonly Stock[]): Fault[] {
  const total = parts.reduce((sum, { quantity }) => sum + quantity, 0);
  const advice = 'thicker stock or a narrower stand needs fewer';
  const many: Fault[] =
    total <= MOST_COPIES
      ? []
      : [{ pointer: '/stock', message: needs(says`at most ${MOST_COPIES} parts to cut`, total, advice) }];
  const homeless = parts.filter(({ stock }) => !stocks.some(({ name }) => name === stock));
  return [
    ...many,
    ...homeless.map(({ name, stock }) => ({
      pointer: '/stock',
      message: onPage(
        `expected a stock named "${stock}" for part "${name}", got none`,
        `Part "${name}" needs a stock named "${stock}"`,
      ),
    })),
  ];
}

/** By how much a part is larger than its sheet in the turn that comes nearest to fitting; nothing when one fits. */
export function sizeFaults({ part, views }: Nestable, stock: Stock, index: number, margin: number): Fault[] {
  const { width, height } = stock.sheet;
  const [nearest] = views
    .filter(({ swapped }) => !swapped)
    .map((view) => {
      const narrow = Math.max(0, view.width + 2 * margin - width);
      const low = Math.max(0, view.height + 2 * margin - height);
      return { view, narrow: narrow > FIT ? narrow : 0, low: low > FIT ? low : 0 };
    })
    .sort((a, b) => a.narrow + a.low - b.narrow - b.low);
  if (nearest === undefined || nearest.narrow + nearest.low === 0) return [];
  const short = joined(
    [
      ...(nearest.narrow > 0 ? [says`${shortBy(nearest.narrow)} too narrow`] : []),
      ...(nearest.low > 0 ? [says`${shortBy(nearest.low)} too low`] : []),
    ],
    ' and ',
  );
  const needed = says`${bare(asFixed(nearest.view.width, 1))} × ${asFixed(nearest.view.height, 1)}`;
  return [
    {
      pointer: pointerTo('stock', index, 'sheet'),
      message: needs(
        says`a sheet of at least ${needed} plus margins for part "${part.name}"`,
        says`${bare(asTyped(width))} × ${asTyped(height)}`,
        short,
      ),
    },
  ];
}

/** One decimal, or as many as it takes to say more than nothing. */
const shortBy = (value: number): Quantity =>
  value >= 0.05 ? asFixed(value, 1) : asTyped(Number(value.toPrecision(1)));

export const tooManySheets = (stock: Stock, index: number, most: number): Fault => ({
  pointer: pointerTo('stock', index, 'sheet'),
  message: needs(
    says`at most ${most} sheets of "${stock.name}"`,
    'parts for more',
    'take larger sheets or thicker stock',
  ),
});

/** A stock's own kerf that is wider than the spacing. */
export const stockKerfFault = (kerf: number, spacing: number, index: number): Fault => ({
  pointer: pointerTo('stock', index, 'kerf'),
  message: needs(says`a kerf of at most the spacing of ${asTyped(spacing)}`, asTyped(kerf)),
});

/** A beam or bit that does not fit in, by the stock's own kerf: what to correct is there. */
export const ownKerfFault = ({ message }: Fault, { name, kerf: own }: Stock, index: number, kerf: number): Fault => ({
  pointer: pointerTo('stock', index, 'kerf'),
  message: says`${message}. "${name}" has this kerf of its own${own !== null && kerf < own ? says`; without it the cutter’s of ${asTyped(kerf)} counts` : ''}`,
});

/** More whole sheets than there are. */
export function supplyFaults(sheets: readonly Sheet[], { name, sheets: supply }: Stock, index: number): Fault[] {
  const whole = sheets.filter(({ stock, offcut = false }) => stock === name && !offcut).length;
  if (supply === null || whole <= supply) return [];
  const message = needs(says`the parts on ${supply} sheets of "${name}", as many as there are`, whole);
  return [{ pointer: pointerTo('stock', index, 'sheets'), message }];
}
