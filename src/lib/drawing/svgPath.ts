import type { LinePrimitive } from './primitive.ts';

/** A line as SVG path data, bent edges as arcs. `number`: how numbers are written. */
export function svgPath(
  { points, closed, bulges = [] }: Pick<LinePrimitive, 'points' | 'closed' | 'bulges'>,
  number: (value: number) => string,
): string {
  let data = '';
  points.forEach(([x, y], index) => {
    const before = points[index - 1];
    data += `${before ? step(before, [x, y], bulges[index - 1] ?? 0, number) : 'M'}${number(x)} ${number(y)}`;
  });
  if (!closed || data === '') return data;
  const [first, last, bulge] = [points[0], points.at(-1), bulges[points.length - 1] ?? 0];
  // A straight way back to the start is what Z draws.
  if (!first || !last || bulge === 0) return `${data}Z`;
  return `${data}${step(last, first, bulge, number)}${number(first[0])} ${number(first[1])}Z`;
}

type Place = readonly [number, number];

/** The command up to its end point. With y down a positive bulge turns the way that SVG calls sweep 1. */
function step(from: Place, to: Place, bulge: number, number: (value: number) => string): string {
  if (bulge === 0) return 'L';
  const chord = Math.hypot(to[0] - from[0], to[1] - from[1]);
  const radius = number((chord * (1 + bulge * bulge)) / (4 * Math.abs(bulge)));
  return `A${radius} ${radius} 0 ${Math.abs(bulge) > 1 ? 1 : 0} ${bulge > 0 ? 1 : 0} `;
}
