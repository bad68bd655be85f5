import type { Path } from '$lib/geometry/contour.ts';
import type { Point } from '$lib/geometry/point.ts';
import { letter, LETTERING_ABOVE, LETTERING_BELOW, letteringWidth } from './lettering.ts';

/** A clear strip between lettering and the edges and holes round it, mm. */
const CLEAR = 1.5;
/** Tallest and smallest lettering, mm: under 1 mm a beam makes a blot of it. */
const TALLEST = 5;
const SMALLEST = 1;

/** Where lettering may go: between these two places along the first axis. */
interface Span {
  readonly from: number;
  readonly to: number;
}

/**
 * A line of lettering inside a polygon, as large as fits up to 5 mm, in the middle of the span. The first of the texts that
 * fits at 1 mm or more is taken, the longest first; empty when none does.
 */
export function labelInside(polygon: readonly Point[], span: Span, texts: readonly string[]): readonly Path[] {
  const middle = (span.from + span.to) / 2;
  for (const text of texts) {
    const height = tallestFit(polygon, span, text);
    if (height === null) continue;
    const half = letteringWidth(text, height) / 2;
    const room = roomBetween(polygon, middle - half - CLEAR, middle + half + CLEAR);
    const lift = (LETTERING_ABOVE - LETTERING_BELOW) * height;
    return letter(text, { height, x: middle, y: (room.low + room.high - lift) / 2, anchor: 'middle' });
  }
  return [];
}

/** Halves the step between what fits and what does not; finer than a beam is wide. mm. */
const STEP = 0.05;

function tallestFit(polygon: readonly Point[], span: Span, text: string): number | null {
  const fits = (height: number): boolean => {
    const half = letteringWidth(text, height) / 2 + CLEAR;
    const middle = (span.from + span.to) / 2;
    if (2 * half > span.to - span.from) return false;
    const { low, high } = roomBetween(polygon, middle - half, middle + half);
    return high - low >= (LETTERING_ABOVE + LETTERING_BELOW) * height + 2 * CLEAR;
  };
  if (!fits(SMALLEST)) return null;
  let [small, tall] = [SMALLEST, TALLEST];
  if (fits(tall)) return tall;
  while (tall - small > STEP) {
    const height = (small + tall) / 2;
    if (fits(height)) small = height;
    else tall = height;
  }
  return small;
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
