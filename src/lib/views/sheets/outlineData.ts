import type { Contour, Vertex } from '$lib/geometry/contour.ts';

/** Thousandths of a millimetre: what files keep. */
const number = (value: number): string => String(Math.round(value * 1000) / 1000);

/** Path data of a contour in its own frame, y up: for a group that is turned over as a whole. */
export function outlineData(contour: Contour): string {
  if (contour.kind === 'circle') {
    const [x, y] = contour.centre;
    const r = number(contour.radius);
    const half = (way: number): string => `A${r} ${r} 0 0 1 ${number(x + way * contour.radius)} ${number(y)}`;
    return `M${number(x - contour.radius)} ${number(y)}${half(1)}${half(-1)}Z`;
  }
  const [first] = contour.vertices;
  if (first === undefined) return '';
  const moves = contour.vertices.flatMap((from, i) => {
    const to = contour.vertices[i + 1] ?? (contour.closed ? first : undefined);
    return to === undefined ? [] : [edgeData(from, to)];
  });
  return `M${number(first.x)} ${number(first.y)}${moves.join('')}${contour.closed ? 'Z' : ''}`;
}

/** With y up, an arc that turns counter-clockwise has sweep 1. */
function edgeData({ x, y, bulge }: Vertex, to: Vertex): string {
  const end = `${number(to.x)} ${number(to.y)}`;
  if (bulge === 0) return `L${end}`;
  const radius = number((Math.hypot(to.x - x, to.y - y) * (1 + bulge * bulge)) / (4 * Math.abs(bulge)));
  return `A${radius} ${radius} 0 ${Math.abs(bulge) > 1 ? 1 : 0} ${bulge > 0 ? 1 : 0} ${end}`;
}

/** Several contours as one path. */
export const outlinesData = (contours: readonly Contour[]): string => contours.map(outlineData).join('');
