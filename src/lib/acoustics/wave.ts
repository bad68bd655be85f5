import type { Transfer } from './branches.ts';
import { frequencies } from './grid.ts';
import { jincNear } from './jincTable.ts';

/** One way of sound, ready to be added up: everything that does not change with frequency. */
export interface Wave {
  /** Ratio of pressures before directivity and screens: strength and what the surface keeps, over the length in mm. */
  readonly gain: number;
  /** Phase lag, radians per Hz. */
  readonly turn: number;
  /** The piston's argument ka·sin θ, per Hz. */
  readonly argument: number;
  /** 1/corner², s²: of what the cabinet takes off behind its baffle, and of the body in the way; 0 for none. */
  readonly behind: number;
  readonly screened: number;
  /** What the crossover sends to the driver. */
  readonly branch: Transfer;
}

/**
 * Adds a wave to a sum over the frequencies of the grid from the place `first` up to but not including `end`:
 * gain · D(ka·sin θ) · screens · branch · e^(−j·turn·f).
 */
export function addWave(sum: Transfer, wave: Wave, first = 0, end = frequencies.length): void {
  const { gain, turn, argument, behind, screened } = wave;
  const { re: branchRe, im: branchIm } = wave.branch;
  const { re, im } = sum;
  for (let i = first; i < end; i++) {
    const f = frequencies[i] ?? 0;
    const square = f * f;
    const level = (gain * jincNear(argument * f)) / Math.sqrt((1 + behind * square) * (1 + screened * square));
    const cosine = level * Math.cos(turn * f);
    const sine = level * Math.sin(turn * f);
    const a = branchRe[i] ?? 0;
    const b = branchIm[i] ?? 0;
    re[i] = (re[i] ?? 0) + a * cosine + b * sine;
    im[i] = (im[i] ?? 0) + b * cosine - a * sine;
  }
}

export const silence = (): Transfer => ({
  re: new Float64Array(frequencies.length),
  im: new Float64Array(frequencies.length),
});

/** Adds `from` to `sum` at every frequency. */
export function addTransfer(sum: Transfer, from: Transfer): void {
  for (let i = 0; i < sum.re.length; i++) {
    sum.re[i] = (sum.re[i] ?? 0) + (from.re[i] ?? 0);
    sum.im[i] = (sum.im[i] ?? 0) + (from.im[i] ?? 0);
  }
}
