import { MM_PER_INCH, type LengthUnit } from '$lib/project/units.ts';
import { formatNumber } from '$lib/views/ui/formatNumber.ts';

/** A line of a map: where it lies, mm, and how far from the planned head, in the unit shown, with its sign. */
export interface MapLine {
  readonly at: number;
  readonly text: string;
}

/** Every so many of the unit: 100 mm, or 4 in. */
const EVERY = { mm: 100, in: 4 } as const;

/** The lines of one axis of a map between its ends, mm, counted from the planned head. */
export function awayFrom(
  planned: number,
  [low, high]: readonly [number, number],
  unit: LengthUnit,
): readonly MapLine[] {
  const step = EVERY[unit] * (unit === 'mm' ? 1 : MM_PER_INCH);
  const first = Math.ceil((low - planned) / step);
  const last = Math.floor((high - planned) / step);
  return Array.from({ length: last - first + 1 }, (_, i) => {
    const away = first + i;
    const text = formatNumber(away * EVERY[unit], 0);
    return { at: planned + away * step, text: away > 0 ? `+${text}` : text };
  });
}
