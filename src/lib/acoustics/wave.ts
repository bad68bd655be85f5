import type { Transfer } from './branches.ts';
import { EVERYWHERE, FREQUENCIES, frequencies } from './grid.ts';
import { jincAlong } from './jincTable.ts';
import { turnAlong } from './turn.ts';

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

/** Written over by each wave: what its delay turns it by, and how much its driver sends that way. */
const cosines = new Float64Array(FREQUENCIES);
const sines = new Float64Array(FREQUENCIES);
const beams = new Float64Array(FREQUENCIES);
const fills = new Float64Array(FREQUENCIES);

/**
 * Adds a wave to a sum at some places of the grid, all of them by default:
 * gain · (D(ka·sin θ) − j·filled·D′) · behind · branch · bent · e^(−j·turn·f).
 */
export function addWave(sum: Transfer, wave: Wave, places = EVERYWHERE): void {
  const { gain, turn, argument, filled, behind, bent } = wave;
  const { re: branchRe, im: branchIm } = wave.branch;
  const { re, im } = sum;
  turnAlong(turn, places, cosines, sines);
  jincAlong(argument, places, beams, filled === 0 ? null : fills);
  for (let i = places.first; i < places.end; i++) {
    const f = frequencies[i] ?? 0;
    const level = behind === 0 ? gain : gain / Math.sqrt(1 + behind * f * f);
    const beam = level * (beams[i] ?? 0);
    const fill = filled === 0 ? 0 : level * filled * (fills[i] ?? 0);
    const c = cosines[i] ?? 0;
    const s = sines[i] ?? 0;
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
  re: new Float64Array(FREQUENCIES),
  im: new Float64Array(FREQUENCIES),
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
