import { circle, polygonPath } from '$lib/geometry/contour.ts';
import { cutOrder } from '$lib/workshop/cutOrder.ts';
import type { CutPath } from '$lib/workshop/kerf.ts';
import { medianTime, type Measured } from './measure.ts';

/** A thousand blocks of two holes: every pair against every pair would take far longer than the limit. */
const blocks: readonly CutPath[] = Array.from({ length: 1000 }, (_, i) => {
  const [x, y] = [(i % 40) * 50, Math.floor(i / 40) * 50];
  const [right, top] = [x + 30, y + 30];
  return {
    outside: polygonPath([[x, y], [right, y], [right, top], [x, top]]), // prettier-ignore
    inside: [circle([x + 6, y + 6], 2), circle([x + 20, y + 20], 3)],
    engrave: [],
  };
});

/** The order of cutting three thousand contours. */
export function benchCutOrder(): Measured {
  const checksum = cutOrder(blocks).travel.toFixed(3);
  const median = medianTime(() => void cutOrder(blocks), 5, 1);
  return { name: 'cut order, 3,000 contours', median, limit: 500, checksum };
}
