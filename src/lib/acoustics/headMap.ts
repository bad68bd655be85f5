import { vec3, type Vec3 } from '$lib/geometry/point.ts';
import { strainOf, type HeadHearing } from './headHearing.ts';

/** A stretch of an axis, from its low to its high end, mm. */
export type Stretch = readonly [number, number];

/** Where to look: across and up are x and y in plan, y and z from the side; `at` is the third coordinate. */
export interface HeadPlane {
  readonly plane: 'plan' | 'side';
  readonly at: number;
  readonly across: Stretch;
  readonly up: Stretch;
}

/**
 * What heads hear in the middle of each cell of a grid, row by row from the low end, each row from its low end. `used` is
 * the share of the limit that is used up most: free up to 1. The others as in `HeadHearing`.
 */
export interface HeadMap extends HeadPlane {
  readonly columns: number;
  readonly rows: number;
  readonly used: Float64Array;
  readonly treble: Float64Array;
  /** Null where it is not known. */
  readonly crossover: Float64Array | null;
  readonly time: Float64Array;
  readonly level: Float64Array;
}

/** Cells of a map across and up, unless told otherwise. */
const MAP_SIDE = 60;

export function headMap(
  hear: (head: Vec3) => HeadHearing,
  where: HeadPlane,
  columns = MAP_SIDE,
  rows = MAP_SIDE,
): HeadMap {
  const values = () => new Float64Array(columns * rows);
  const map = { used: values(), treble: values(), crossover: values(), time: values(), level: values() };
  let known = true;
  for (let row = 0; row < rows; row++) {
    for (let column = 0; column < columns; column++) {
      const hearing = hear(placeIn(where, middleOf(where.across, column, columns), middleOf(where.up, row, rows)));
      const cell = row * columns + column;
      map.used[cell] = strainOf(hearing).used;
      map.treble[cell] = hearing.treble;
      map.crossover[cell] = hearing.crossover ?? 0;
      known &&= hearing.crossover !== null;
      map.time[cell] = hearing.time;
      map.level[cell] = hearing.level;
    }
  }
  return { ...where, columns, rows, ...map, crossover: known ? map.crossover : null };
}

const middleOf = ([low, high]: Stretch, index: number, count: number): number =>
  low + ((high - low) * (index + 0.5)) / count;

const placeIn = ({ plane, at }: HeadPlane, across: number, up: number): Vec3 =>
  plane === 'plan' ? vec3(across, up, at) : vec3(at, across, up);
