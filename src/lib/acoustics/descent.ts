import type { Transfer } from './branches.ts';
import { EVERYWHERE, FREQUENCIES, frequencies, OCTAVES_APART } from './grid.ts';

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

/**
 * The integral over ln k is as smooth as x·e^(−x) over ln x, so it is worked out at every eighth frequency of the grid, one
 * before it and two past it too, and Newton's cubic leads from one to the next. Its error is (9/16)·h⁴/24 of the fourth
 * derivative over ln k, which is under 3 for θ in a span of 1: 2e-5 of θ's span with h a sixth of an octave.
 */
const APART = 8;
const SPARSE = Math.ceil((FREQUENCIES - 1) / APART) + 3;

/** h·x·e^(−x) with x = k·s, for the node i and every eighth frequency, the n-th from the one before the grid, at n·NODES + i. */
const weights = Float64Array.from({ length: SPARSE * NODES }, (_, at) => {
  const place = APART * (Math.floor(at / NODES) - 1) + STEPS * (at % NODES);
  const x = 2 * Math.PI * (frequencies[0] ?? NaN) * FIRST * ratio ** place;
  return STEP * x * Math.exp(-x);
});

/** The nodes that count at every eighth frequency: x from `LEAST` to `MOST`, as at the ends of the grid. */
const counts = {
  first: Int32Array.from({ length: SPARSE }, (_, n) => nodeOf(n, LEAST)),
  end: Int32Array.from({ length: SPARSE }, (_, n) => nodeOf(n, MOST) + 1),
};

function nodeOf(n: number, x: number): number {
  const lowest = 2 * Math.PI * (frequencies[0] ?? NaN) * FIRST * ratio ** (APART * (n - 1));
  return Math.min(NODES, Math.max(0, Math.floor(Math.log(x / lowest) / STEP)));
}

/** The detours s at which θ is asked for, mm, growing; `speed` is the speed of sound, m/s. */
export const detoursAt = (speed: number): Float64Array =>
  Float64Array.from({ length: NODES }, (_, i) => 1000 * speed * FIRST * ratio ** (STEPS * i));

/** Written over by each call: the integral at every eighth frequency. */
const sparse = { re: new Float64Array(SPARSE), im: new Float64Array(SPARSE) };

/** k∫e^(−ks)·θ(s)ds at some places of the grid, in the unit of θ, which is given at the nodes; written to `into`. */
export function alongDescent(theta: Transfer, into: Transfer, { first, end } = EVERYWHERE): Transfer {
  const last = Math.floor((end - 1) / APART) + 3;
  for (let n = Math.floor(first / APART); n <= last; n++) {
    const from = counts.first[n] ?? 0;
    const to = counts.end[n] ?? 0;
    let re = 0;
    let im = 0;
    for (let i = from; i < to; i++) {
      const weight = weights[n * NODES + i] ?? 0;
      re += weight * (theta.re[i] ?? 0);
      im += weight * (theta.im[i] ?? 0);
    }
    sparse.re[n] = re;
    sparse.im[n] = im;
  }
  between(sparse.re, into.re, first, end);
  between(sparse.im, into.im, first, end);
  return into;
}

function between(known: Float64Array, into: Float64Array, first: number, end: number): void {
  let n = -1;
  let [here, slope, half, sixth] = [0, 0, 0, 0];
  for (let j = first; j < end; j++) {
    const place = Math.floor(j / APART);
    if (place !== n) {
      n = place;
      const before = known[n] ?? 0;
      const next = known[n + 2] ?? 0;
      const after = known[n + 3] ?? 0;
      here = known[n + 1] ?? 0;
      slope = next - here;
      half = (next - 2 * here + before) / 2;
      sixth = (after - 3 * next + 3 * here - before) / 6;
    }
    const t = j / APART - n;
    into[j] = here + t * (slope + (t - 1) * (half + (t + 1) * sixth));
  }
}
