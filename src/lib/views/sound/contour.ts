import { contours } from 'd3';
import type { HeadMap } from '$lib/acoustics/headMap.ts';
import type { Point } from '$lib/geometry/point.ts';

/** Rings of the places of a map where a value stays at or under a limit, in the map's own plane, mm. */
export function ringsWithin(map: HeadMap, values: ArrayLike<number>, limit: number): Point[][] {
  const { columns, rows, across, up } = map;
  // Contours are drawn round what is at least a threshold: the negative of what is at most a limit.
  const [found] = contours().size([columns, rows]).thresholds([-limit])(Array.from(values, (value) => -value));
  const at = ([column = 0, row = 0]: readonly number[]): Point => [
    across[0] + ((across[1] - across[0]) * column) / columns,
    up[0] + ((up[1] - up[0]) * row) / rows,
  ];
  return (found?.coordinates ?? []).flatMap((polygon) => polygon.map((ring) => ring.map(at)));
}
