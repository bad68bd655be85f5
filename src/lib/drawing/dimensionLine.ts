import type { Point } from '$lib/geometry/point.ts';
import { arrowhead } from './arrowhead.ts';
import type { Box } from './box.ts';
import type { DimensionStyle } from './dimensionStyle.ts';
import { textWidth } from './dimensionStyle.ts';
import type { DrawnDimension, DrawnText } from './drawnDimension.ts';
import { between, direction, offset, reverse } from './paperVector.ts';
import { toPaper, type Place } from './place.ts';
import { readingWay, turnOf } from './readable.ts';
import type { Dimension } from './view.ts';

/** Arrows inside need their own lengths and a piece of line between them, in arrow lengths. */
const ROOM_INSIDE = 2.6;
/** Tail of an outside arrow beyond its head, in arrow lengths. */
const TAIL = 0.8;

/** The line between the arrow tips: its ends, its way, and the measured points. */
interface Span {
  readonly points: readonly [Point, Point];
  readonly tips: readonly [Point, Point];
  readonly way: Point;
}

const rowOffset = (row: number, { first, step }: DimensionStyle): number => first + (Math.abs(row) - 1) * step;

/** Where the dimension line lies on the axis square to the run, paper units. */
function level(dimension: Dimension, place: Place, extent: Box, style: DimensionStyle): number {
  const { row, run } = dimension;
  const up = run === 'across';
  if (row === 0) {
    const [x, y] = toPaper(place, dimension.from);
    return up ? y : x;
  }
  const edge = dimension.base ?? (up ? extent[row > 0 ? 3 : 1] : extent[row > 0 ? 2 : 0]);
  const [x, y] = toPaper(place, [edge, edge]);
  const outwards = Math.sign(row) * rowOffset(row, style);
  return up ? y - outwards : x + outwards;
}

function spanOf(dimension: Dimension, place: Place, extent: Box, style: DimensionStyle): Span {
  const points = [toPaper(place, dimension.from), toPaper(place, dimension.to)] as const;
  const [a, b] = points;
  if (dimension.run === 'aligned') {
    const way = direction(a, b);
    // To the left of the way as the view has it, whose second axis runs up where the paper's runs down.
    const out: Point = [way[1], -way[0]];
    const clear = (dimension.base ?? 0) * place.scale;
    const by = dimension.row === 0 ? 0 : Math.sign(dimension.row) * (clear + rowOffset(dimension.row, style));
    return { points, tips: [offset(a, out, by), offset(b, out, by)], way };
  }
  const at = level(dimension, place, extent, style);
  return dimension.run === 'across'
    ? {
        points,
        tips: [
          [a[0], at],
          [b[0], at],
        ],
        way: [b[0] < a[0] ? -1 : 1, 0],
      }
    : {
        points,
        tips: [
          [at, a[1]],
          [at, b[1]],
        ],
        way: [0, b[1] > a[1] ? 1 : -1],
      };
}

/** From a gap at the object to a little past the dimension line; none where the line lies on the point itself. */
function extension(point: Point, tip: Point, { gap, overrun }: DimensionStyle): readonly Point[][] {
  const length = Math.hypot(tip[0] - point[0], tip[1] - point[1]);
  if (length <= gap) return [];
  const way = direction(point, tip);
  return [[offset(point, way, gap), offset(tip, way, overrun)]];
}

const lengthOf = ([a, b]: readonly [Point, Point]): number => Math.hypot(b[0] - a[0], b[1] - a[1]);

/** Half the height of figures, as a share of the text size. */
const HALF_FIGURE = 0.36;

/** A level text that ends just left of a point, half-way up its figures. */
const levelText = ([x, y]: Point, text: string, { textGap, textSize }: DimensionStyle): DrawnText => ({
  text,
  at: [x - textGap, y + HALF_FIGURE * textSize],
  turn: 0,
  anchor: 'end',
});

/** Where the middle of a text stands that fits between the arrows: it reaches past one by an arrow's length at the most. */
function textPlace(
  { textAt = 0.5 }: Dimension,
  tips: readonly [Point, Point],
  width: number,
  { arrow }: DimensionStyle,
): Point {
  const [a, b] = tips;
  const room = lengthOf(tips);
  const least = room === 0 ? 0.5 : Math.min(0.5, Math.max(0, width / 2 - arrow) / room);
  return between(a, b, Math.min(1 - least, Math.max(least, textAt)));
}

function textOn(
  at: Point,
  way: Point,
  text: string,
  anchor: DrawnText['anchor'],
  { textGap }: DimensionStyle,
): DrawnText {
  // A text's own "up" is a quarter turn counter-clockwise from its way, which on paper with y down is [y, −x].
  return { text, at: offset(at, [way[1], -way[0]], textGap), turn: turnOf(way), anchor };
}

/**
 * A linear dimension on the paper. `extent`: the view's own, from which rows are counted; `text`: its value as the project
 * shows it, never measured here. Arrows flip outside when the room is short; the text then moves beside them when it does
 * not fit between.
 */
export function dimensionLine(
  dimension: Dimension,
  place: Place,
  extent: Box,
  style: DimensionStyle,
  text: string,
): DrawnDimension {
  const { points, tips, way } = spanOf(dimension, place, extent, style);
  const [a, b] = tips;
  const room = lengthOf(tips);
  const inside = room >= ROOM_INSIDE * style.arrow;
  const width = textWidth(text, style);
  const fits = room >= width + style.textGap;
  const tail = style.arrow * (1 + TAIL);
  const reading = readingWay(way);
  const outwards = dimension.beside === 'from' ? reverse(way) : way;
  const end = dimension.beside === 'from' ? a : b;
  const start = offset(end, outwards, inside ? style.arrow : tail);
  const level = dimension.level === true && !fits;
  const reach = fits || level ? 0 : (inside ? style.arrow : tail) + width;
  const [before, after] = dimension.beside === 'from' ? [reach, 0] : [0, reach];
  const shelf = inside ? 0 : tail;
  return {
    extensions: [...extension(points[0], a, style), ...extension(points[1], b, style)],
    lines: [[offset(a, way, -Math.max(shelf, before)), offset(b, way, Math.max(shelf, after))]],
    arrows: [arrowhead(a, inside ? reverse(way) : way, style), arrowhead(b, inside ? way : reverse(way), style)],
    text: fits
      ? textOn(textPlace(dimension, tips, width, style), reading, text, 'middle', style)
      : level
        ? levelText(start, text, style)
        : textOn(
            start,
            reading,
            text,
            outwards[0] * reading[0] + outwards[1] * reading[1] > 0 ? 'start' : 'end',
            style,
          ),
  };
}
