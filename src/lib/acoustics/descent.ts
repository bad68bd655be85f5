import type { Transfer } from './branches.ts';
import { FREQUENCIES, frequencies, OCTAVES_APART } from './grid.ts';

/**
 * Waves from an edge have the form e^(−jkL)·k∫e^(−ks)·θ(s)ds, s from 0 to ∞: the integral along the edge, turned onto the
 * path in the complex plane on which it decays instead of swinging (steepest descent: A. Asheim and U. P. Svensson, JASA
 * 128(4), 2010). θ is 0 at 0, bounded, and smooth over ln s, so that the trapezoidal rule over ln s settles it with a few
 * dozen detours s for all frequencies together.
 *
 * The rule's error falls as e^(−2πd/h), h its step in ln s, with d = π/2 from ln s to θ's nearest singularity: 6e-7 of θ's
 * span at a step of an octave.
 */

/** From one node to the next, in steps of the grid of frequencies: near an octave, and so that k·s falls on one table. */
const STEPS = 48;
const STEP = STEPS * OCTAVES_APART * Math.LN2;

/** From where to where k·s counts at the ends of the grid: under the least the whole integral is less than that of θ's span. */
const LEAST = 1e-5;
const MOST = 30;

const ratio = 2 ** OCTAVES_APART;
/** The first node, s over the speed of sound, in seconds. */
const FIRST = LEAST / (2 * Math.PI * (frequencies[FREQUENCIES - 1] ?? NaN));
const NODES = Math.ceil(Math.log(MOST / LEAST / ratio ** (1 - FREQUENCIES)) / STEP);

/** h·x·e^(−x) with x = k·s, for the node i and the frequency j at the place j + STEPS·i. */
const weights = Float64Array.from({ length: FREQUENCIES + STEPS * NODES }, (_, place) => {
  const x = 2 * Math.PI * (frequencies[0] ?? NaN) * FIRST * ratio ** place;
  return STEP * x * Math.exp(-x);
});

/** The detours s at which θ is asked for, mm, growing; `speed` is the speed of sound, m/s. */
export const detoursAt = (speed: number): Float64Array =>
  Float64Array.from({ length: NODES }, (_, i) => 1000 * speed * FIRST * ratio ** (STEPS * i));

/** k∫e^(−ks)·θ(s)ds at each frequency of the grid, in the unit of θ, which is given at the nodes. */
export function alongDescent({ re, im }: Transfer): Transfer {
  const sum = { re: new Float64Array(FREQUENCIES), im: new Float64Array(FREQUENCIES) };
  for (let j = 0; j < FREQUENCIES; j++) {
    let [a, b] = [0, 0];
    for (let i = 0; i < NODES; i++) {
      const weight = weights[j + STEPS * i] ?? 0;
      a += weight * (re[i] ?? 0);
      b += weight * (im[i] ?? 0);
    }
    sum.re[j] = a;
    sum.im[j] = b;
  }
  return sum;
}
