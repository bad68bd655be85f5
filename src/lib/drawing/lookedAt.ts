import type { Item, View } from './view.ts';

/** A view to be looked at only: none of its numbers can be typed over. */
export const lookedAt = (view: View): View => ({ ...view, items: view.items.map(withoutInput) });

function withoutInput(item: Item): Item {
  if (item.kind !== 'dimension' && item.kind !== 'angle') return item;
  const { input, ...rest } = item;
  return input === undefined ? item : rest;
}
