import { sideNames, type SideName } from '$lib/project/project.ts';
import type { Transfer } from './branches.ts';
import { FREQUENCIES, frequencies } from './grid.ts';
import { together } from './wave.ts';
import { cosineNear, sineNear } from './turn.ts';

/** A pressure over the grid that, but for the turn of its delay, changes little from one frequency to the next. */
export interface Delayed {
  readonly sum: Transfer;
  /** Phase lag of its delay, radians per Hz. */
  readonly turn: number;
}

/** Cells of the grid: from each frequency to the next. */
const CELLS = FREQUENCIES - 1;

/** Values taken for each turn of the fastest ripple in a cell, and at the least. */
const A_TURN = 8;
const LEAST = 2;

/** What turns by less than this against the rest within a cell, radians, counts as going straight: off by 0.2²/2 at the most. */
const STRAIGHT = 0.4;

const spanOf = (cell: number): number => (frequencies[cell + 1] ?? 0) - (frequencies[cell] ?? 0);

/**
 * Mean power in each cell of either loudspeaker, the sum of its parts, and of both together. Towards the top of the grid
 * late reflections ripple several times within a cell, so that its two ends say nothing of what lies between. There each
 * part goes from one end to the other in a straight line but for its turn, which is followed exactly. Parts that hardly
 * turn against one another go together, and all do in cells where all hardly turn.
 */
export function cellPowers(
  all: Readonly<Record<SideName, readonly Delayed[]>>,
): Record<SideName | 'both', Float64Array> {
  const parts = { left: gathered(all.left), right: gathered(all.right) };
  const turns = [...all.left, ...all.right].map(({ turn }) => turn);
  const earliest = Math.min(...turns);
  const spread = Math.max(...turns) - earliest;
  const stepsIn = (span: number): number => Math.max(LEAST, Math.ceil((A_TURN * span * spread) / (2 * Math.PI)));

  const powers = { left: new Float64Array(CELLS), right: new Float64Array(CELLS), both: new Float64Array(CELLS) };
  let cell = 0;
  const whole = { left: together(all.left), right: together(all.right) };
  for (; cell < CELLS && spanOf(cell) * spread < STRAIGHT; cell++) {
    addStraight(powers, whole, cell, (earliest + spread / 2) * spanOf(cell));
  }
  const room = stepsIn(spanOf(CELLS - 1));
  const walk = (): Transfer => ({ re: new Float64Array(room), im: new Float64Array(room) });
  const walks = { left: walk(), right: walk() };
  for (; cell < CELLS; cell++) {
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

/** Parts whose turns lie so near each other that they may count as one, added up. */
function gathered(parts: readonly Delayed[]): Delayed[] {
  const near = STRAIGHT / spanOf(CELLS - 1);
  const groups: Delayed[][] = [];
  for (const part of [...parts].sort((a, b) => a.turn - b.turn)) {
    const group = groups.at(-1);
    if (group?.[0] && part.turn - group[0].turn < near) group.push(part);
    else groups.push([part]);
  }
  return groups.map((group) => {
    const [first, last] = [group[0]?.turn ?? 0, group.at(-1)?.turn ?? 0];
    return { sum: together(group), turn: (first + last) / 2 };
  });
}

/** The mean of a straight line's square between a and b is (|a|² + |b|² + Re a·b*)/3; b is the far end, turned back. */
function addStraight(
  powers: Record<SideName | 'both', Float64Array>,
  whole: Readonly<Record<SideName, Transfer>>,
  cell: number,
  turn: number,
): void {
  const [c, s] = [cosineNear(turn), sineNear(turn)];
  const [left, right] = sideNames.map((side) => {
    const { re, im } = whole[side];
    const [x, y] = [re[cell + 1] ?? 0, im[cell + 1] ?? 0];
    return [re[cell] ?? 0, im[cell] ?? 0, x * c - y * s, y * c + x * s] as const;
  });
  if (!left || !right) return;
  powers.left[cell] = meanSquare(...left);
  powers.right[cell] = meanSquare(...right);
  powers.both[cell] = meanSquare(left[0] + right[0], left[1] + right[1], left[2] + right[2], left[3] + right[3]);
}

const meanSquare = (a: number, b: number, x: number, y: number): number =>
  (a * a + b * b + x * x + y * y + a * x + b * y) / 3;

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
  const [cosine, sine] = [cosineNear(turn), sineNear(turn)];
  const [endRe, endIm] = [sum.re[cell + 1] ?? 0, sum.im[cell + 1] ?? 0];
  const [toRe, toIm] = [endRe * cosine - endIm * sine, endIm * cosine + endRe * sine];
  const [byRe, byIm] = [(toRe - fromRe) / steps, (toIm - fromIm) / steps];
  const full = (turn - common) / steps;
  let [x, y] = [fromRe + byRe / 2, fromIm + byIm / 2];
  let [c, s] = [cosineNear(full / 2), sineNear(full / 2)];
  const [stepC, stepS] = [cosineNear(full), sineNear(full)];
  for (let step = 0; step < steps; step++) {
    re[step] = (re[step] ?? 0) + x * c + y * s;
    im[step] = (im[step] ?? 0) + y * c - x * s;
    x += byRe;
    y += byIm;
    [c, s] = [c * stepC - s * stepS, s * stepC + c * stepS];
  }
}
