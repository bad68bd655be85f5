import type { Transfer } from './branches.ts';
import { FREQUENCIES, frequencies, type Places } from './grid.ts';
import { turnAlong } from './turn.ts';

const roots = frequencies.map(Math.sqrt);

/** Entries for each unit of v, and where the table ends; beyond, four terms of the series in 1/v are exact to 1e-9. */
const PER_UNIT = 512;
const END = 8;
/** The series in 1/v of f and of g, for large v. */
function farF(v: number): number {
  const over = 1 / (Math.PI * v * v);
  return (1 - 3 * over * over * (1 - 35 * over * over)) / (Math.PI * v);
}
function farG(v: number): number {
  const over = 1 / (Math.PI * v * v);
  return (over * (1 - 15 * over * over * (1 - 63 * over * over))) / (Math.PI * v);
}

/**
 * f′ = −πvg and g′ = πvf − 1, integrated down from the end of the table, where the series holds, by Runge and Kutta’s rule of
 * fourth order: a step turns by a twentieth of a radian at the most and is off by 1e-9.
 */
function tabled(): { readonly f: Float64Array; readonly g: Float64Array } {
  const last = END * PER_UNIT;
  const table = { f: new Float64Array(last + 1), g: new Float64Array(last + 1) };
  const step = -1 / PER_UNIT;
  let [f, g] = [farF(END), farG(END)];
  const slope = (v: number, a: number, b: number) => [-Math.PI * v * b, Math.PI * v * a - 1] as const;
  for (let i = last; i >= 0; i--) {
    table.f[i] = f;
    table.g[i] = g;
    const v = i / PER_UNIT;
    const [f1, g1] = slope(v, f, g);
    const [f2, g2] = slope(v + step / 2, f + (f1 * step) / 2, g + (g1 * step) / 2);
    const [f3, g3] = slope(v + step / 2, f + (f2 * step) / 2, g + (g2 * step) / 2);
    const [f4, g4] = slope(v + step, f + f3 * step, g + g3 * step);
    f += ((f1 + 2 * f2 + 2 * f3 + f4) * step) / 6;
    g += ((g1 + 2 * g2 + 2 * g3 + g4) * step) / 6;
  }
  return table;
}

const table = tabled();

/** Written over by each call: what −πv²/2 turns by. */
const cosines = new Float64Array(FREQUENCIES);
const sines = new Float64Array(FREQUENCIES);

/**
 * Adds `sign` times Fresnel's integral ∫ᵥ^∞ e^(−jπt²/2)dt for each v = edge · √f at some places of the grid, to within
 * 2e-6: (g − jf)·e^(−jπv²/2) by the auxiliary functions f and g, straight between the entries of a table (NIST Handbook of
 * Mathematical Functions, 7.7), and under 0 what −v leaves of the whole, 1 − j.
 */
export function addBeyond(edge: number, sign: 1 | -1, places: Places, { re, im }: Transfer): void {
  const own = edge < 0 ? -sign : sign;
  const whole = edge < 0 ? sign : 0;
  const size = Math.abs(edge);
  turnAlong((Math.PI / 2) * edge * edge, places, cosines, sines);
  for (let i = places.first; i < places.end; i++) {
    const v = size * (roots[i] ?? 0);
    let f: number;
    let g: number;
    if (v < END) {
      const place = v * PER_UNIT;
      const entry = Math.floor(place);
      const t = place - entry;
      f = (1 - t) * (table.f[entry] ?? 0) + t * (table.f[entry + 1] ?? 0);
      g = (1 - t) * (table.g[entry] ?? 0) + t * (table.g[entry + 1] ?? 0);
    } else {
      f = farF(v);
      g = farG(v);
    }
    const c = cosines[i] ?? 0;
    const s = sines[i] ?? 0;
    re[i] = (re[i] ?? 0) + whole + own * (g * c - f * s);
    im[i] = (im[i] ?? 0) - whole - own * (g * s + f * c);
  }
}
