import type { Point } from '$lib/geometry/point.ts';
import { unionOf } from './box.ts';
import { extentOf } from './extent.ts';
import type { Item, Outline, View } from './view.ts';

/** Outlines nearer to each other than this at every corner are one line on any paper, mm. */
const SAME = 0.5;

/**
 * A view with another layout's view of the same kind laid faintly over it: what is visible there, and the axes, in thin dashes
 * without fill. What stands just where it stands in the view itself is left out. The extent holds both.
 */
export function laidOver(view: View, other: View): View {
  const own = new Map(view.items.flatMap((item) => (isVisible(item) ? [[item.id, item.points] as const] : [])));
  const laid = other.items.flatMap((item): Item[] =>
    isVisible(item) && !isSame(own.get(item.id), item.points) ? [dashed(item)] : [],
  );
  return laid.length === 0
    ? view
    : { ...view, items: [...view.items, ...laid], extent: unionOf([view.extent, extentOf(laid)]) };
}

const isVisible = (item: Item): item is Outline =>
  item.kind === 'outline' && (item.pen === 'wide' || item.pen === 'aim');

const isSame = (one: readonly Point[] | undefined, other: readonly Point[]): boolean =>
  one?.length === other.length &&
  one.every(([x, y], index) => {
    const [otherX, otherY] = other[index] ?? [Infinity, Infinity];
    return Math.hypot(x - otherX, y - otherY) < SAME;
  });

const dashed = ({ id, points, closed }: Outline): Outline => ({
  kind: 'outline',
  id: `other-${id}`,
  subject: 'other',
  pen: 'other',
  points,
  closed,
  filled: false,
});
