import type { Dimension, Item, Rank, View } from './view.ts';

/** Whether the dimension stands in a row outside the whole view. */
export const inRow = (item: Item): item is Dimension =>
  item.kind === 'dimension' && item.run !== 'aligned' && item.base === undefined && item.row !== 0;

const sideKey = ({ run, row }: Dimension): string => `${run}${Math.sign(row)}`;

/** The view without items that ask for more room than there is, or for less. */
export const ofRank = (view: View, rank: Rank): View => ({
  ...view,
  items: view.items.filter((item) => (item.rank ?? 1) <= rank && rank <= (item.upTo ?? 4)),
});

/** Whether the view gives an input without being enlarged. */
export const givesAtRest = (view: View, input: string): boolean =>
  ofRank(view, 1).items.some((item) => 'input' in item && item.input === input);

/** The view without the dimensions of inputs that another view of the same sheet gives already: a size is given once. */
export function withoutRepeats(view: View, other: View): View {
  const given = new Set(other.items.flatMap((item) => ('input' in item && item.input ? [item.input] : [])));
  return { ...view, items: view.items.filter((item) => !('input' in item && item.input && given.has(item.input))) };
}

/** The view with the empty rows taken out, each side by itself, so that lines stand no further out than they need to. */
export function closeRows(view: View): View {
  const used = new Map<string, number[]>();
  for (const item of view.items.filter(inRow)) {
    const rows = used.get(sideKey(item)) ?? [];
    if (!rows.includes(Math.abs(item.row))) rows.push(Math.abs(item.row));
    used.set(sideKey(item), rows);
  }
  return {
    ...view,
    items: view.items.map((item) => {
      if (!inRow(item)) return item;
      const rows = (used.get(sideKey(item)) ?? []).sort((a, b) => a - b);
      return { ...item, row: Math.sign(item.row) * (rows.indexOf(Math.abs(item.row)) + 1) };
    }),
  };
}

/** How many rows stand on each side of the view. */
export function rowCounts(view: View): { left: number; right: number; above: number; below: number } {
  const rows = view.items.filter(inRow);
  const most = (run: Dimension['run'], sign: number): number =>
    rows.reduce((least, item) => (item.run === run ? Math.max(least, item.row * sign) : least), 0);
  return { left: most('up', -1), right: most('up', 1), above: most('across', 1), below: most('across', -1) };
}
