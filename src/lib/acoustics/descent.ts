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

/**
 * The integral over ln k is as smooth as x·e^(−x) over ln x, so it is worked out at every eighth frequency of the grid, one
 * before it and two past it too, and Newton's cubic leads from one to the next. Its error is (9/16)·h⁴/24 of the fourth
 * derivative over ln k, which is under 3 for θ in a span of 1: 2e-5 of θ's span with h a sixth of an octave.
 */
const APART = 8;
const PLACES = Math.ceil((FREQUENCIES - 1) / APART) + 3;

/** h·x·e^(−x) with x = k·s, for the node i and every eighth frequency, the n-th from the one before the grid, at n·NODES + i. */
const weights = Float64Array.from({ length: PLACES * NODES }, (_, at) => {
  const place = APART * (Math.floor(at / NODES) - 1) + STEPS * (at % NODES);
  const x = 2 * Math.PI * (frequencies[0] ?? NaN) * FIRST * ratio ** place;
  return STEP * x * Math.exp(-x);
});

/** The nodes that count at every eighth frequency: x from `LEAST` to `MOST`, as at the ends of the grid. */
const counts = {
  first: Int32Array.from({ length: PLACES }, (_, n) => nodeOf(n, LEAST)),
  end: Int32Array.from({ length: PLACES }, (_, n) => nodeOf(n, MOST) + 1),
};

function nodeOf(n: number, x: number): number {
  const lowest = 2 * Math.PI * (frequencies[0] ?? NaN) * FIRST * ratio ** (APART * (n - 1));
  return Math.min(NODES, Math.max(0, Math.floor(Math.log(x / lowest) / STEP)));
}

/** The detours s at which θ is asked for, mm, growing; `speed` is the speed of sound, m/s. */
export const detoursAt = (speed: number): Float64Array =>
  Float64Array.from({ length: NODES }, (_, i) => 1000 * speed * FIRST * ratio ** (STEPS * i));

/** k∫e^(−ks)·θ(s)ds at each frequency of the grid, in the unit of θ, which is given at the nodes; written to `into`. */
export function alongDescent({ re, im }: Transfer, into: Transfer): Transfer {
  descend(re, into.re);
  descend(im, into.im);
  return into;
}

function descend(theta: Float64Array, into: Float64Array): void {
  const sparse = new Float64Array(PLACES);
  for (let n = 0; n < PLACES; n++) {
    let sum = 0;
    for (let i = counts.first[n] ?? 0; i < (counts.end[n] ?? 0); i++) sum += (weights[n * NODES + i] ?? 0) * (theta[i] ?? 0); // prettier-ignore
    sparse[n] = sum;
  }
  for (let j = 0; j < FREQUENCIES; j++) {
    const n = Math.floor(j / APART);
    const t = j / APART - n;
    const before = sparse[n] ?? 0;
    const here = sparse[n + 1] ?? 0;
    const next = sparse[n + 2] ?? 0;
    const after = sparse[n + 3] ?? 0;
    const bend = next - 2 * here + before;
    const twist = after - 3 * next + 3 * here - before;
    into[j] = here + t * (next - here + ((t - 1) / 2) * (bend + ((t + 1) / 3) * twist));
  }
}
