import type { Point } from '$lib/geometry/point.ts';
import type { Heard } from '$lib/proof/heard/heard.ts';
import type { Item, Pen, View } from './view.ts';

/** The chart on paper, mm: hearing from end to end, and 5 dB a line. */
const WIDTH = 160;
const HEIGHT = 72;
const ENDS = [20, 20_000] as const;
const NAMED = [20, 50, 100, 200, 500, 1000, 2000, 5000, 10_000, 20_000] as const;

/** Room for figures at the left, right, under and over the chart, mm. */
const MARGIN = { left: 9, right: 4, under: 7, over: 3 } as const;

/** Levels are shown in whole tens of dB, from these two on, and no further than the outer ones. */
const LEAST_RANGE = [-20, 10] as const;
const MOST_RANGE = [-40, 20] as const;

const across = (f: number): number => (WIDTH * Math.log(f / ENDS[0])) / Math.log(ENDS[1] / ENDS[0]);

/**
 * A measured response over the predicted one and where that may lie, as a chart of a printed sheet: measured wide, predicted
 * dashed, the edges of the band narrow; a ring at a dip that is explained, a cross at one that is not.
 */
export function responseView({ one, overlay, matched }: Heard): View {
  const { frequencies, measured, predicted, band } = overlay;
  const [low, high] = levelsOf([measured, predicted]);
  const up = (level: number): number => (HEIGHT * (Math.min(high, Math.max(low, level)) - low)) / (high - low);
  const curve = (id: string, pen: Pen, levels: Float64Array): Item =>
    line(id, pen, Array.from(frequencies, (f, i): Point => [across(f), up(levels[i] ?? 0)]));
  const levels = Array.from({ length: (high - low) / 10 + 1 }, (_, i) => low + 10 * i);
  return {
    name: `${one.name}: measured over predicted, dB over Hz`,
    toScale: false,
    extent: [-MARGIN.left, -MARGIN.under, WIDTH + MARGIN.right, HEIGHT + MARGIN.over],
    items: [
      { kind: 'outline', id: 'frame', subject: 'other', pen: 'narrow', closed: true, filled: false, points: [[0, 0], [WIDTH, 0], [WIDTH, HEIGHT], [0, HEIGHT]] },
      ...NAMED.slice(1, -1).map((f) => line(`at ${f} Hz`, 'narrow', [[across(f), 0], [across(f), 1.5]])),
      ...levels.slice(1, -1).map((level) => line(`at ${level} dB`, 'narrow', [[0, up(level)], [level === 0 ? WIDTH : 1.5, up(level)]])),
      ...NAMED.map((f) => label(`${f} Hz`, [across(f), -5], f < 1000 ? String(f) : `${f / 1000}k`, 'middle')),
      ...levels.map((level) => label(`${level} dB`, [-1.5, up(level) - 1], String(level).replace('-', '\u2212'), 'end')),
      ...(matched && band ? [curve('least', 'narrow', band.least), curve('most', 'narrow', band.most)] : []),
      ...(matched ? [curve('predicted', 'hidden', predicted)] : []),
      curve('measured', 'wide', measured),
      ...(matched?.dips ?? []).map(({ frequency, level, by }): Item => ({ kind: 'spot', id: `dip at ${frequency}`, subject: 'other', at: [across(frequency), up(level)], mark: by === null ? 'cross' : 'ring' })),
    ],
  };
} // prettier-ignore

const line = (id: string, pen: Pen, points: readonly Point[]): Item => ({ kind: 'outline', id, subject: 'other', pen, points, closed: false, filled: false }); // prettier-ignore

const label = (id: string, at: Point, text: string, anchor: 'middle' | 'end'): Item => ({ kind: 'label', id, subject: 'other', at, text, anchor }); // prettier-ignore

function levelsOf(curves: readonly Float64Array[]): readonly [number, number] {
  let [low, high]: [number, number] = [...LEAST_RANGE];
  for (const curve of curves) {
    for (const level of curve) {
      if (level < low) low = level;
      if (level > high) high = level;
    }
  }
  return [Math.max(MOST_RANGE[0], Math.floor(low / 10) * 10), Math.min(MOST_RANGE[1], Math.ceil(high / 10) * 10)];
}
