import { OCTAVES_APART } from './grid.ts';

/**
 * The mean of a power over a window of so many `octaves`, centred in octaves, at each frequency of the grid, or of a run of
 * it; at the ends, over the part of the window that lies inside. `cells` are the power's means from each frequency to the next.
 */
export function smoothed(cells: Float64Array, octaves: number): Float64Array {
  const reach = octaves / OCTAVES_APART / 2;
  // Running integral in steps of the grid: at its i-th place, from the lowest frequency to the i-th.
  const places = cells.length + 1;
  const integral = new Float64Array(places);
  for (let i = 0; i < cells.length; i++) integral[i + 1] = (integral[i] ?? 0) + (cells[i] ?? 0);
  const mean = new Float64Array(places);
  for (let i = 0; i < places; i++) {
    const low = Math.max(0, i - reach);
    const high = Math.min(cells.length, i + reach);
    mean[i] = (below(integral, cells, high) - below(integral, cells, low)) / (high - low);
  }
  return mean;
}

function below(integral: Float64Array, cells: Float64Array, place: number): number {
  const i = Math.floor(place);
  return (integral[i] ?? 0) + (place - i) * (cells[i] ?? 0);
}
