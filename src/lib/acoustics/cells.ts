import { sideNames, type SideName } from '$lib/project/project.ts';
import type { Transfer } from './branches.ts';
import { FREQUENCIES, frequencies } from './grid.ts';

/** A pressure over the grid that, but for the turn of its delay, changes little from one frequency to the next. */
export interface Delayed {
  readonly sum: Transfer;
  /** Phase lag of its delay, radians per Hz. */
  readonly turn: number;
}

/** Cells of the grid: from each frequency to the next. */
export const CELLS = FREQUENCIES - 1;

/** Values taken for each turn of the fastest ripple in a cell, and at the least. */
const A_TURN = 8;
const LEAST = 2;

/**
 * Mean power in each cell of either loudspeaker, the sum of its parts, and of both together. Towards the top of the grid
 * late reflections ripple several times within a cell, so that its two ends say nothing of what lies between. There each
 * part goes from one end to the other in a straight line but for its turn, which is followed exactly.
 */
export function cellPowers(
  parts: Readonly<Record<SideName, readonly Delayed[]>>,
): Record<SideName | 'both', Float64Array> {
  const turns = [...parts.left, ...parts.right].map(({ turn }) => turn);
  const earliest = Math.min(...turns);
  const spread = Math.max(...turns) - earliest;
  const stepsIn = (span: number): number => Math.max(LEAST, Math.ceil((A_TURN * span * spread) / (2 * Math.PI)));
  const spanOf = (cell: number): number => (frequencies[cell + 1] ?? 0) - (frequencies[cell] ?? 0);

  const powers = { left: new Float64Array(CELLS), right: new Float64Array(CELLS), both: new Float64Array(CELLS) };
  const room = stepsIn(spanOf(CELLS - 1));
  const walk = (): Transfer => ({ re: new Float64Array(room), im: new Float64Array(room) });
  const walks = { left: walk(), right: walk() };
  for (let cell = 0; cell < CELLS; cell++) {
    const span = spanOf(cell);
    const steps = stepsIn(span);
    for (const side of sideNames) {
      const { re, im } = walks[side];
      re.fill(0, 0, steps);
      im.fill(0, 0, steps);
      for (const { sum, turn } of parts[side]) addAlong(walks[side], sum, cell, turn * span, earliest * span, steps);
    }
    let [left, right, both] = [0, 0, 0];
    for (let step = 0; step < steps; step++) {
      const [a, b] = [walks.left.re[step] ?? 0, walks.left.im[step] ?? 0];
      const [x, y] = [walks.right.re[step] ?? 0, walks.right.im[step] ?? 0];
      left += a * a + b * b;
      right += x * x + y * y;
      both += (a + x) ** 2 + (b + y) ** 2;
    }
    powers.left[cell] = left / steps;
    powers.right[cell] = right / steps;
    powers.both[cell] = both / steps;
  }
  return powers;
}

/** Adds a part in the middles of so many steps of a cell, in which its delay turns it by `turn`, all parts by `common` alike. */
function addAlong(
  { re, im }: Transfer,
  sum: Transfer,
  cell: number,
  turn: number,
  common: number,
  steps: number,
): void {
  const [fromRe, fromIm] = [sum.re[cell] ?? 0, sum.im[cell] ?? 0];
  // The far end, turned back.
  const [cosine, sine] = [Math.cos(turn), Math.sin(turn)];
  const [endRe, endIm] = [sum.re[cell + 1] ?? 0, sum.im[cell + 1] ?? 0];
  const [toRe, toIm] = [endRe * cosine - endIm * sine, endIm * cosine + endRe * sine];
  const [byRe, byIm] = [(toRe - fromRe) / steps, (toIm - fromIm) / steps];
  const full = (turn - common) / steps;
  let [x, y] = [fromRe + byRe / 2, fromIm + byIm / 2];
  let [c, s] = [Math.cos(full / 2), Math.sin(full / 2)];
  const [stepC, stepS] = [Math.cos(full), Math.sin(full)];
  for (let step = 0; step < steps; step++) {
    re[step] = (re[step] ?? 0) + x * c + y * s;
    im[step] = (im[step] ?? 0) + y * c - x * s;
    x += byRe;
    y += byIm;
    [c, s] = [c * stepC - s * stepS, s * stepC + c * stepS];
  }
}
