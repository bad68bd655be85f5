import { OCTAVES_APART } from './grid.ts';

/**
 * The mean of a power over a window of so many `octaves`, centred in octaves, at each frequency of the grid; at the ends
 * of the grid, over the part of the window that lies inside. Each value counts as standing half a step to both sides.
 */
export function smoothed(power: Float64Array, octaves: number): Float64Array {
  const reach = octaves / OCTAVES_APART / 2;
  // Running integral of the steps: at its i-th place, of everything below the i-th value's lower edge.
  const integral = new Float64Array(power.length + 1);
  for (let i = 0; i < power.length; i++) integral[i + 1] = (integral[i] ?? 0) + (power[i] ?? 0);
  const mean = new Float64Array(power.length);
  for (let i = 0; i < power.length; i++) {
    const low = Math.max(0, i + 0.5 - reach);
    const high = Math.min(power.length, i + 0.5 + reach);
    mean[i] = (below(integral, power, high) - below(integral, power, low)) / (high - low);
  }
  return mean;
}

function below(integral: Float64Array, power: Float64Array, place: number): number {
  const i = Math.floor(place);
  return (integral[i] ?? 0) + (place - i) * (power[i] ?? 0);
}
