import type { Point } from '$lib/geometry/point.ts';
import type { LinePrimitive } from './primitive.ts';

/** A line as SVG path data, bent edges as arcs. `number`: how numbers are written. */
export function svgPath(
  { points, closed, bulges }: Pick<LinePrimitive, 'points' | 'closed' | 'bulges'>,
  number: (value: number) => string,
): string {
  if (bulges?.some((bulge) => bulge !== 0)) return bentPath(points, closed, bulges, number);
  let data = '';
  for (const point of points) data += `${data === '' ? 'M' : 'L'}${number(point[0])} ${number(point[1])}`;
  return closed && data !== '' ? `${data}Z` : data;
}

function bentPath(
  points: readonly Point[],
  closed: boolean,
  bulges: readonly number[],
  number: (value: number) => string,
): string {
  const edges = points.map((from, index) => {
    const last = index === points.length - 1;
    const to = points[last ? 0 : index + 1];
    const bulge = bulges[index] ?? 0;
    // A straight way back to the start is what Z draws.
    if (!to || (last && (!closed || bulge === 0))) return '';
    return `${bulge === 0 ? 'L' : arc(from, to, bulge, number)}${number(to[0])} ${number(to[1])}`;
  });
  const [x = NaN, y = NaN] = points[0] ?? [];
  return `M${number(x)} ${number(y)}${edges.join('')}${closed ? 'Z' : ''}`;
}

/** The command up to its end point. With y down a positive bulge turns the way that SVG calls sweep 1. */
function arc(from: Point, to: Point, bulge: number, number: (value: number) => string): string {
  const chord = Math.hypot(to[0] - from[0], to[1] - from[1]);
  const radius = number((chord * (1 + bulge * bulge)) / (4 * Math.abs(bulge)));
  return `A${radius} ${radius} 0 ${Math.abs(bulge) > 1 ? 1 : 0} ${bulge > 0 ? 1 : 0} `;
}
