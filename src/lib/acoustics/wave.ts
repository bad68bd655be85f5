import type { Transfer } from './branches.ts';
import { frequencies } from './grid.ts';
import { jincFall, jincNear } from './jincTable.ts';
import { cosineNear, sineNear } from './turn.ts';

/** One way of sound, ready to be added up: everything that does not change with frequency; what stands near it counts afterwards (`shade`). */
export interface Wave {
  /** Ratio of pressures before directivity: strength and what the surface keeps, over the length in mm. */
  readonly gain: number;
  /** Phase lag, radians per Hz. */
  readonly turn: number;
  /** The piston's argument ka·sin θ, per Hz. */
  readonly argument: number;
  /** How much fills the piston's nulls, 0…1: 0 in front of the baffle (`filledBehind`). */
  readonly filled: number;
  /** 1/corner², s², of what the cabinet takes off behind its baffle; 0 for nothing. */
  readonly behind: number;
  /** What the crossover sends to the driver. */
  readonly branch: Transfer;
  /** Of a wave from an edge, k∫e^(−ks)·θ(s)ds (`alongDescent`); null for any other. */
  readonly bent: Transfer | null;
}

/**
 * Adds a wave to a sum over the frequencies of the grid from the place `first` up to but not including `end`:
 * gain · (D(ka·sin θ) − j·filled·D′) · behind · branch · bent · e^(−j·turn·f).
 */
export function addWave(sum: Transfer, wave: Wave, first = 0, end = frequencies.length): void {
  const { gain, turn, argument, filled, behind, bent } = wave;
  const { re: branchRe, im: branchIm } = wave.branch;
  const { re, im } = sum;
  for (let i = first; i < end; i++) {
    const f = frequencies[i] ?? 0;
    const square = f * f;
    const level = gain / Math.sqrt(1 + behind * square);
    const beam = level * jincNear(argument * f);
    const fill = filled === 0 ? 0 : level * filled * jincFall(argument * f);
    const c = cosineNear(turn * f);
    const s = sineNear(turn * f);
    const cosine = beam * c + fill * s;
    const sine = beam * s - fill * c;
    let a = branchRe[i] ?? 0;
    let b = branchIm[i] ?? 0;
    if (bent !== null) {
      const u = bent.re[i] ?? 0;
      const v = bent.im[i] ?? 0;
      const real = a * u - b * v;
      b = a * v + b * u;
      a = real;
    }
    re[i] = (re[i] ?? 0) + a * cosine + b * sine;
    im[i] = (im[i] ?? 0) + b * cosine - a * sine;
  }
}

export const silence = (): Transfer => ({
  re: new Float64Array(frequencies.length),
  im: new Float64Array(frequencies.length),
});

/** The sum of several; of one, that one. */
export function together(parts: readonly { readonly sum: Transfer }[]): Transfer {
  const [only] = parts;
  if (only && parts.length === 1) return only.sum;
  const all = silence();
  for (const { sum } of parts) addTransfer(all, sum);
  return all;
}

/** Adds `from` to `sum` at every frequency. */
function addTransfer(sum: Transfer, from: Transfer): void {
  for (let i = 0; i < sum.re.length; i++) {
    sum.re[i] = (sum.re[i] ?? 0) + (from.re[i] ?? 0);
    sum.im[i] = (sum.im[i] ?? 0) + (from.im[i] ?? 0);
  }
}
