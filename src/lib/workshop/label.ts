import type { Point } from '$lib/geometry/point.ts';
import { LETTERING_ABOVE, LETTERING_BELOW, letteringWidth } from './lettering.ts';
import type { PartLabel } from './part.ts';

/** A clear strip between lettering and the edges and holes round it, mm. */
const CLEAR = 1.5;
/** Tallest and smallest lettering, mm: under 1 mm a beam makes a blot of it. */
const TALLEST = 5;
const SMALLEST = 1;
/** Heights tried differ by this, mm: finer than anyone sees. */
const STEP = 0.25;

/** Where lettering may go: between these two places along the first axis. */
interface Span {
  readonly from: number;
  readonly to: number;
}

/**
 * A line of lettering inside a polygon, as large as fits up to 5 mm, in the middle of the span. The first of the texts that
 * fits at 1 mm or more is taken, the longest first; none when none does.
 */
export function labelInside(polygon: readonly Point[], span: Span, texts: readonly string[]): readonly PartLabel[] {
  for (const text of texts) {
    const width = unitWidth(text);
    for (let height = TALLEST; height >= SMALLEST; height -= STEP) {
      const label = fitted(polygon, span, text, width, height);
      if (label) return [label];
    }
  }
  return [];
}

/** Widths of texts at a height of 1. A plan asks for the same few again and again, with every keystroke. */
const widths = new Map<string, number>();
const MOST_WIDTHS = 64;

function unitWidth(text: string): number {
  const known = widths.get(text);
  if (known !== undefined) return known;
  if (widths.size >= MOST_WIDTHS) widths.clear();
  const width = letteringWidth(text, 1);
  widths.set(text, width);
  return width;
}

/** The label at this height, or null when it does not fit. `width` is that of the text at a height of 1. */
function fitted(
  polygon: readonly Point[],
  { from, to }: Span,
  text: string,
  width: number,
  height: number,
): PartLabel | null {
  const half = (width * height) / 2 + CLEAR;
  if (2 * half > to - from) return null;
  const x = (from + to) / 2;
  const { low, high } = roomBetween(polygon, x - half, x + half);
  if (high - low < (LETTERING_ABOVE + LETTERING_BELOW) * height + 2 * CLEAR) return null;
  return { text, height, x, y: (low + high - (LETTERING_ABOVE - LETTERING_BELOW) * height) / 2 };
}

/** The band of heights that lies inside the polygon all the way from one place to the other. */
function roomBetween(polygon: readonly Point[], from: number, to: number): { low: number; high: number } {
  const places = [from, to, ...polygon.map(([x]) => x).filter((x) => x > from && x < to)];
  const bands = places.map((x) => lowestBand(polygon, x));
  return { low: Math.max(...bands.map(({ low }) => low)), high: Math.min(...bands.map(({ high }) => high)) };
}

/** The lowest stretch of a plumb line through the polygon; nothing where the line misses it. */
function lowestBand(polygon: readonly Point[], x: number): { low: number; high: number } {
  const crossings = polygon
    .flatMap(([x1, y1], i) => {
      const [x2, y2] = polygon[(i + 1) % polygon.length] ?? [x1, y1];
      if (x1 === x2 || x < Math.min(x1, x2) || x > Math.max(x1, x2)) return [];
      return [y1 + ((y2 - y1) * (x - x1)) / (x2 - x1)];
    })
    .sort((a, b) => a - b);
  const [low] = crossings;
  // Where two edges meet the line is crossed twice at one height; the next crossing over it closes the stretch.
  const high = crossings.find((y) => low !== undefined && y > low);
  return low === undefined || high === undefined ? { low: 0, high: 0 } : { low, high };
}
