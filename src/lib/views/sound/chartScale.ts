import { scaleLinear, scaleLog } from 'd3';

/** Where a chart's curves lie on its paper, px. */
export interface ChartFrame {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}

/** Hearing, from end to end, Hz. */
const ENDS = [20, 20_000] as const;

/** Room for the figures of both axes. */
const MARGIN = { left: 44, right: 12, top: 26, bottom: 34 } as const;

/** Height of a row over the chart, for brackets, px. */
const ROW = 22;

export const frameOf = (width: number, height: number, hasBrackets = false): ChartFrame => ({
  left: MARGIN.left,
  top: MARGIN.top + (hasBrackets ? ROW : 0),
  right: width - MARGIN.right,
  bottom: height - MARGIN.bottom,
});

/** Lines of the frequency axis: 1, 2, 3 … of each decade; and octaves by their nominal middles (ISO 266, from memory). */
const decades = [10, 100, 1000, 10_000];
export const frequencyLines: readonly number[] = decades
  .flatMap((decade) => [1, 2, 3, 4, 5, 6, 7, 8, 9].map((of) => decade * of))
  .filter((f) => f >= ENDS[0] && f <= ENDS[1]);
export const namedFrequencies: readonly number[] = [20, 50, 100, 200, 500, 1000, 2000, 5000, 10_000, 20_000];
export const octaves: readonly number[] = [31.5, 63, 125, 250, 500, 1000, 2000, 4000, 8000, 16_000];
export const isDecade = (frequency: number): boolean => decades.includes(frequency);

export const acrossScale = ({ left, right }: ChartFrame) => scaleLog([...ENDS], [left, right]);
export const upScale = ({ top, bottom }: ChartFrame, [low, high]: readonly [number, number]) =>
  scaleLinear([low, high], [bottom, top]);

/** Levels that a chart spans, in whole tens of dB: what the calmer curves reach, and never less than from −20 to +10. */
export function levelsFor(curves: readonly ArrayLike<number>[], deepest = -40): readonly [number, number] {
  let [low, high] = [-20, 10];
  for (const curve of curves) {
    for (let i = 0; i < curve.length; i++) {
      const level = curve[i] ?? 0;
      if (level < low) low = level;
      if (level > high) high = level;
    }
  }
  return [Math.max(deepest, Math.floor(low / 10) * 10), Math.min(30, Math.ceil(high / 10) * 10)];
}

/** Lines of the level axis, dB. */
export const levelLines = ([low, high]: readonly [number, number]): number[] =>
  Array.from({ length: (high - low) / 5 + 1 }, (_, i) => low + 5 * i);

/** Labels that have room: the most important first, each at least so far from those that stand already. Their places in the list. */
export function roomFor(
  places: readonly { readonly at: number; readonly weight: number }[],
  apart: number,
): Set<number> {
  const order = places.map((place, index) => ({ ...place, index })).sort((a, b) => b.weight - a.weight);
  const stand: { at: number; index: number }[] = [];
  for (const { at, index } of order) {
    if (stand.every((other) => Math.abs(other.at - at) >= apart)) stand.push({ at, index });
  }
  return new Set(stand.map(({ index }) => index));
}

/** Neighbours of one name told once. */
export interface Bracket {
  readonly text: string;
  readonly from: number;
  readonly to: number;
  readonly count: number;
}

/** Runs of two and more marks of one name, in the order of their places. */
export function bracketsOf(marks: readonly { readonly x: number; readonly text: string }[]): readonly Bracket[] {
  const runs: Bracket[] = [];
  for (const { x, text } of marks.toSorted((a, b) => a.x - b.x)) {
    const last = runs.at(-1);
    if (last?.text === text) runs[runs.length - 1] = { ...last, to: x, count: last.count + 1 };
    else runs.push({ text, from: x, to: x, count: 1 });
  }
  return runs.filter(({ count }) => count > 1);
}
