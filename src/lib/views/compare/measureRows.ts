import { decimalsOf } from '$lib/files/measureText.ts';
import { fromMillimetres, type LengthDisplay } from '$lib/project/units.ts';
import type { Comparison } from '$lib/study/compare.ts';
import type { MeasureText } from '$lib/study/measure.ts';
import { formatNumber } from '$lib/views/ui/formatNumber.ts';

/** What one layout has by a measure. */
export interface MeasureCell {
  /** The bare number, or words where there is none; null while it is worked out. */
  readonly text: string | null;
  /** Empty where there is no number. */
  readonly unit: string;
  readonly mark: 'best' | 'worst' | null;
  /** Null where there is none, or not yet. */
  readonly value: number | null;
}

export interface MeasureRow {
  readonly measure: MeasureText;
  /** In the order of the compared layouts. */
  readonly cells: readonly MeasureCell[];
  /** Whether the layouts differ by it. */
  readonly differs: boolean;
}

/** No digit that a tape does not carry, as long as it tells the best from the worst. */
const DECIMALS: Readonly<Record<MeasureText['unit'], number>> = { '°': 1, mm: 0, µs: 0, dB: 1, kg: 1, '%': 0, '': 0 };
/** More of them in inches, which are longer. */
const INCH = 2;

/** The layouts by some measures, each number with as many digits as it takes to tell the best of its row from the worst. */
export const measureRows = (by: readonly MeasureText[], comparison: Comparison, display: LengthDisplay): MeasureRow[] =>
  by.map((measure) => measureRow(measure, comparison, display));

function measureRow(measure: MeasureText, { layouts, best, worst }: Comparison, display: LengthDisplay): MeasureRow {
  const { name } = measure;
  const differs = best[name] !== undefined;
  const decimals = decimalsFor(measure, { layouts, best, worst }, display);
  return {
    measure,
    differs,
    cells: layouts.map(({ name: layout, ok, values }): MeasureCell => {
      const value = values[name];
      if (value === undefined) return { text: ok ? null : '–', unit: '', mark: null, value: null };
      const mark = best[name]?.includes(layout) ? 'best' : worst[name]?.includes(layout) ? 'worst' : null;
      if (value === null) return { text: ok ? noneText(measure) : '–', unit: '', mark, value };
      return { ...numberOf(measure, value, decimals, display), mark, value };
    }),
  };
}

const noneText = ({ missing }: MeasureText): string => (missing?.is === 'best' ? 'none' : 'not known');

function decimalsFor(
  measure: MeasureText,
  { layouts, best, worst }: Pick<Comparison, 'layouts' | 'best' | 'worst'>,
  display: LengthDisplay,
): number {
  const { name } = measure;
  const [good, bad] = [best[name]?.[0], worst[name]?.[0]].map(
    (of) => layouts.find((layout) => layout.name === of)?.values[name] ?? null,
  );
  const most = decimalsOf(measure);
  const text = (value: number, decimals: number): string => numberOf(measure, value, decimals, display).text;
  let decimals = DECIMALS[measure.unit];
  if (typeof good !== 'number' || typeof bad !== 'number') return decimals;
  while (decimals < most && text(good, decimals) === text(bad, decimals)) decimals += 1;
  return decimals;
}

function numberOf(
  { unit }: MeasureText,
  value: number,
  decimals: number,
  { length }: LengthDisplay,
): { readonly text: string; readonly unit: string } {
  if (unit !== 'mm') return { text: formatNumber(value, decimals), unit };
  const more = length === 'in' ? INCH : 0;
  return { text: formatNumber(fromMillimetres(value, length), decimals + more), unit: length };
}
