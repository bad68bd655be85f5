import { pathPrimitive } from '$lib/drawing/primitive.ts';
import { svgPath } from '$lib/drawing/svgPath.ts';
import type { Contour } from '$lib/geometry/contour.ts';

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
  return svgPath(pathPrimitive(contour, 0), number);
}

/** Several contours as one path. */
export const outlinesData = (contours: readonly Contour[]): string => contours.map(outlineData).join('');
