import type { Point } from '$lib/geometry/point.ts';

/** Hundredths of a pixel: finer than any screen shows, and half the text of the full digits. */
const number = (value: number): string => String(Math.round(value * 100) / 100);

/** Path data through paper points. */
export const pathData = (points: readonly Point[], closed = false): string =>
  points.length === 0 ? '' : `M${points.map(([x, y]) => `${number(x)} ${number(y)}`).join('L')}${closed ? 'Z' : ''}`;

/** Several open lines as one path. */
export const linesData = (lines: readonly (readonly Point[])[]): string => lines.map((line) => pathData(line)).join('');
