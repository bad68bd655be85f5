import type { Point } from '$lib/geometry/point.ts';

/** Hundredths of a pixel: finer than any screen shows, and half the text of the full digits. */
const number = (value: number): string => String(Math.round(value * 100) / 100);

/** Path data through paper points. */
export function pathData(points: readonly Point[], closed = false): string {
  let data = '';
  for (const point of points) data += `${data === '' ? 'M' : 'L'}${number(point[0])} ${number(point[1])}`;
  return closed && data !== '' ? `${data}Z` : data;
}

/** Several open lines as one path. */
export const linesData = (lines: readonly (readonly Point[])[]): string => lines.map((line) => pathData(line)).join('');
