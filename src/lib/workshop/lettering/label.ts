import type { Point } from '$lib/geometry/point.ts';
import { LETTERING_ABOVE, LETTERING_BELOW, letteringWidth } from './lettering.ts';
import type { PartLabel } from '$lib/workshop/part.ts';

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

/** Widths of texts at a height of 1. Parts ask for the same few again and again. */
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

interface Band {
  readonly low: number;
  readonly high: number;
}

/** The band of heights that lies inside the polygon all the way from one place to the other. */
function roomBetween(polygon: readonly Point[], from: number, to: number): Band {
  let band = narrower(lowestBand(polygon, from), lowestBand(polygon, to));
  for (const corner of polygon) {
    if (corner[0] > from && corner[0] < to) band = narrower(band, lowestBand(polygon, corner[0]));
  }
  return band;
}

const narrower = (a: Band, b: Band): Band => ({ low: Math.max(a.low, b.low), high: Math.min(a.high, b.high) });

/** The lowest stretch of a plumb line through the polygon; nothing where the line misses it. */
function lowestBand(polygon: readonly Point[], x: number): Band {
  let low = Infinity;
  let high = Infinity;
  let before = polygon.at(-1);
  for (const corner of polygon) {
    const y = before ? crossingAt(before, corner, x) : null;
    before = corner;
    // Where two edges meet the line is crossed twice at one height; the next crossing over it closes the stretch.
    if (y === null || y === low) continue;
    if (y < low) {
      high = low;
      low = y;
    } else if (y < high) high = y;
  }
  return high === Infinity ? { low: 0, high: 0 } : { low, high };
}

/** The height at which an edge that is not plumb crosses the plumb line at `x`; null where it does not. */
function crossingAt(from: Point, to: Point, x: number): number | null {
  if (from[0] === to[0] || x < Math.min(from[0], to[0]) || x > Math.max(from[0], to[0])) return null;
  return from[1] + ((to[1] - from[1]) * (x - from[0])) / (to[0] - from[0]);
}
