import type { Point } from '$lib/geometry/point.ts';
import { boxOf, type Box } from './box.ts';
import type { Item } from './view.ts';

const pointsOf = (item: Item): readonly Point[] => {
  switch (item.kind) {
    case 'outline':
      return item.points;
    case 'round':
      return [-item.radius, item.radius].map((offset) => [item.centre[0] + offset, item.centre[1] + offset]);
    case 'spot':
    case 'label':
      return [item.at];
    case 'dimension':
    case 'angle':
      return [];
  }
};

/** The box round what is drawn, dimensions aside: they stand outside it. */
export const extentOf = (items: readonly Item[]): Box => boxOf(items.flatMap(pointsOf));
