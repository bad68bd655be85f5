import type { LinePrimitive } from '$lib/drawing/primitive.ts';
import { svgPath } from '$lib/drawing/svgPath.ts';
import type { Point } from '$lib/geometry/point.ts';

/** Hundredths of a pixel: finer than any screen shows, and half the text of the full digits. */
const number = (value: number): string => String(Math.round(value * 100) / 100);

/** Path data of a line, its bent edges as arcs. */
export const lineData = (line: Pick<LinePrimitive, 'points' | 'closed' | 'bulges'>): string => svgPath(line, number);

/** Path data through paper points. */
export const pathData = (points: readonly Point[], closed = false): string => lineData({ points, closed });

/** Several open lines as one path. */
export const linesData = (lines: readonly (readonly Point[])[]): string => lines.map((line) => pathData(line)).join('');
