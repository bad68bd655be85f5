import { degrees } from '$lib/geometry/angle.ts';
import { polygonPath } from '$lib/geometry/contour.ts';
import type { Point } from '$lib/geometry/point.ts';
import type { Stock } from '$lib/project/project.ts';
import { labelInside } from './label.ts';
import type { Part } from './part.ts';

/** As long on the desk as a hand is wide, and as high at its thin end as lettering needs, mm. */
const LONG = 120;
const THIN = 12;
/** No gauge is higher than this, mm; a steep one is shorter instead. */
const HIGH = 120;
/** The narrowest that still stands by itself, mm. */
const NARROW = 20;
/** Beyond this a gauge would be a spike, radians. */
const STEEPEST = (65 * Math.PI) / 180;

/**
 * A gauge that stands on the desk beside the stand: its top has the slope of the wedge, front high for a positive tilt, its
 * left end the front. Null for an angle that no gauge shows.
 *
 * @param tilt Radians.
 */
export function wedgeGauge(name: string, tilt: number, stock: Pick<Stock, 'name' | 'thickness'>): Part | null {
  const steep = Math.abs(tilt);
  if (!(steep <= STEEPEST)) return null;
  const length = Math.max(NARROW, Math.min(LONG, (HIGH - THIN) / Math.tan(steep)));
  const rise = length * Math.tan(steep);
  const [front, rear] = tilt >= 0 ? [THIN + rise, THIN] : [THIN, THIN + rise];
  return gauge(name, 'FRONT · ', tilt, stock, [
    [0, 0],
    [length, 0],
    [length, rear],
    [0, front],
  ]);
}

/**
 * A gauge that stands on the desk in front of the baffle: its right edge leans as the baffle does, back at the top for a
 * positive elevation. Null for an angle that no gauge shows.
 *
 * @param elevation Of the axis, radians: tilt and rake.
 */
export function baffleGauge(name: string, elevation: number, stock: Pick<Stock, 'name' | 'thickness'>): Part | null {
  if (!(Math.abs(elevation) <= STEEPEST)) return null;
  const lean = Math.tan(elevation);
  const height = Math.min(HIGH, (LONG - NARROW) / Math.max(Math.abs(lean), 1e-9));
  const foot = lean < 0 ? NARROW - lean * height : 2 * NARROW;
  const top = foot + lean * height;
  return gauge(name, '', elevation, stock, [
    [0, 0],
    [foot, 0],
    [top, height],
    [lean < 0 ? 0 : top - NARROW, height],
  ]);
}

function gauge(
  name: string,
  prefix: string,
  angle: number,
  { name: stock, thickness }: Pick<Stock, 'name' | 'thickness'>,
  outline: readonly Point[],
): Part {
  const shown = `${degrees(angle).toFixed(2)}°`;
  const left = Math.min(...outline.map(([x]) => x));
  const points = outline.map(([x, y]): Point => [x - left, y]);
  const length = Math.max(...points.map(([x]) => x));
  return {
    name,
    stock,
    thickness,
    quantity: 1,
    outside: polygonPath(points),
    inside: [],
    mark: [],
    labels: labelInside(points, { from: 0, to: length }, [`${prefix}${name.toUpperCase()} ${shown}`, shown]),
  };
}
